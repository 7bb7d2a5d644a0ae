"""An exercise held still at one place of its path, for the solver to say what is so there."""

import math
import re
import tomllib

SINGLE_JOINTS = ("lumbar", "neck")


def hinges_of(key):
    """A key of a pose names one hinge, or both of a pair when it leaves the side out."""
    if key.split("_")[0] in ("right", "left", *SINGLE_JOINTS):
        return [key]
    return [f"right_{key}", f"left_{key}"]


def degrees(value):
    """An angle as a file has it: a number of degrees, or a text with its unit."""
    if isinstance(value, str):
        number, unit = value.split()
        return math.degrees(float(number)) if unit == "rad" else float(number)
    return float(value)


def angles_of(table):
    """Hinge to angle [deg] of the entries of a pose or of a path's end."""
    return {hinge: degrees(value) for key, value in table.items()
            if not isinstance(value, dict) for hinge in hinges_of(key)}


def held(setup_text, progress):
    """The text of the same setup without a path, its pose the one at a place of it, 0 to 1."""
    setup = tomllib.loads(setup_text)
    start, end = angles_of(setup.get("pose", {})), angles_of(setup.get("path", {}))
    pose = ["[pose]"]
    for hinge in start | end:
        first = start.get(hinge, 0.0)
        pose.append(f"{hinge} = {first + progress * (end.get(hinge, first) - first)!r}")
    head, *sections = re.split(r"(?m)^(?=\[)", setup_text)
    kept = [one for one in sections if not re.match(r"\[(?:path|tempo|pose)\]", one)]
    return head + "\n".join(pose) + "\n\n" + "".join(kept)
