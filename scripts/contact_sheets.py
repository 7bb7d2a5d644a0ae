#!/usr/bin/python3
"""Draws every shipped setup from every side on sheets to be looked at, one for each look:

    scripts/contact_sheets.py PROGRAM FOLDER

Writes FOLDER/levers-LOOK.svg and FOLDER/body-VIEW-LOOK.svg, and PNGs beside them where the command
rsvg-convert is there. Make them before and after a change to the drawings, and look at both.
"""

import re
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
SETUPS = ROOT / "assets" / "setups"
LOOKS = ("light", "dark", "print")
VIEWS = ("side", "front", "above", "oblique")
CELL = (640, 480)
SHOWN = (384, 288)
COLUMNS = 5


def drawn(program, setup, look, *arguments):
    """The drawing of a setup as an SVG element without a size."""
    file = FOLDER / "cell.svg"
    command = [program, "draw", setup, "--out", file, "--look", look,
               "--size", f"{CELL[0]}x{CELL[1]}", *arguments]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    text = file.read_text(encoding="utf-8")
    file.unlink()
    return re.sub(r"^<\?xml[^>]*>\s*", "", text)


def sheet(program, name, setups, look, *arguments):
    cells = []
    for place, setup in enumerate(setups):
        x = SHOWN[0] * (place % COLUMNS)
        y = SHOWN[1] * (place // COLUMNS)
        element = drawn(program, setup, look, *arguments)
        element = re.sub(r' width="[^"]*" height="[^"]*"',
                         f' x="{x}" y="{y}" width="{SHOWN[0]}" height="{SHOWN[1]}"', element, count=1)
        cells.append(element)
    rows = -(-len(setups) // COLUMNS)
    width, height = SHOWN[0] * COLUMNS, SHOWN[1] * rows
    file = FOLDER / f"{name}.svg"
    file.write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
        f'viewBox="0 0 {width} {height}">\n{"".join(cells)}</svg>\n', encoding="utf-8")
    if shutil.which("rsvg-convert"):
        subprocess.run(["rsvg-convert", str(file), "-o", str(file.with_suffix(".png"))], check=True)
    print(file)


if len(sys.argv) != 3:
    sys.exit(__doc__)
FOLDER = Path(sys.argv[2])
FOLDER.mkdir(parents=True, exist_ok=True)
LEVERS = sorted(SETUPS.glob("*.setup.toml"))
BODIES = sorted((SETUPS / "body").glob("*.setup.toml"))
for one in LOOKS:
    sheet(sys.argv[1], f"levers-{one}", LEVERS, one)
    for view in VIEWS:
        sheet(sys.argv[1], f"body-{view}-{one}", BODIES, one, "--view", view)
