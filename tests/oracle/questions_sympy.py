#!/usr/bin/env python3
"""Recomputes the answers of generated questions from what they state, and from nothing else.

For every numeric question it takes the list `given` and the name `asked`, writes down the laws that
hold for quantities of these names, lets SymPy solve them for what is asked, and compares. It shares
no code with the program. The laws are those of any statics text (OpenStax College Physics 2e,
chapter 9); unit factors are exact by NIST SP 811 (2008), Appendix B.8.

Usage: questions_sympy.py PROGRAM [COUNT]
"""

import collections
import json
import math
import subprocess
import sys

import sympy

POUND_KG = 0.45359237
POUND_N = 4.4482216152605
UNITS = {
    "": 1.0, "%": 0.01,
    "m": 1.0, "cm": 0.01, "mm": 0.001, "in": 0.0254, "ft": 0.3048,
    "kg": 1.0, "g": 0.001, "lb": POUND_KG,
    "N": 1.0, "kN": 1000.0, "lbf": POUND_N,
    "N·m": 1.0, "N·cm": 0.01, "ft·lbf": POUND_N * 0.3048, "in·lbf": POUND_N * 0.0254,
    "°": math.pi / 180.0, "m/s²": 1.0, "ft/s²": 0.3048, "N/m": 1.0, "J": 1.0, "s": 1.0,
}

# A weight along an upright axis turns nothing; what is called so is there to be left out.
IGNORED = {"weight", "scene"}


def symbol(name):
    return sympy.Symbol(name, positive=True)


def arm_law(part, given):
    """How the moment arm of one force follows from the places and angles that are stated."""
    arm, distance = symbol(f"{part}_arm"), symbol(f"{part}_distance")
    if f"{part}_arm" in given:
        return None
    if part == "load" and {"upper_arm", "forearm"} <= given:
        return arm - (symbol("upper_arm") * sympy.cos(symbol("lever_angle")) + symbol("forearm"))
    if f"{part}_at" in given and "axis_at" in given:
        return arm - sympy.Abs(symbol(f"{part}_at") - symbol("axis_at"))
    if part == "own" and "lever_length" in given:
        axis = symbol("axis_at") if "axis_at" in given else 0
        return arm - sympy.Abs(symbol("lever_length") / 2 - axis)
    if part == "effort" and "lever_length" in given and "effort_distance" not in given:
        return arm - symbol("lever_length")
    if f"{part}_angle" in given:
        return arm - distance * sympy.sin(symbol(f"{part}_angle"))
    if "lever_angle" in given:
        return arm - distance * sympy.cos(symbol("lever_angle"))
    return arm - distance


def laws(given, asked):
    """Every law as an expression that is zero."""
    s = symbol
    g = s("gravity")
    result = []
    parts = ["load", "own", "effort"] + (["load_2"] if any(n.startswith("load_2_") for n in given) else [])
    for part in parts:
        if asked == "lever_angle" and part == "load":
            result.append(s("load_arm") - s("load_distance") * sympy.cos(s("lever_angle")))
        elif asked == f"{part}_distance":
            result.append(s(f"{part}_arm") - s(f"{part}_distance") * sympy.sin(s(f"{part}_angle")))
        else:
            result.append(arm_law(part, given))
        result.append(s(f"{part}_force") - s(f"{part}_mass") * g)
        result.append(s(f"{part}_torque") - s(f"{part}_force") * s(f"{part}_arm"))
    if "body_mass" in given:
        result.append(s("load_force") - s("body_mass") * g)
    if "wanted" in given:
        result.append(s("load_torque") - s("wanted"))
    if "stiffness" in given:
        result.append(s("load_force") - s("stiffness") * (s("band_length") - s("slack_length")))

    total = s("load_torque")
    weights = s("load_force")
    if "own_mass" in given:
        # A question may load the lever with nothing but its own weight.
        loaded = any(n.startswith("load_") for n in given)
        total = (s("load_torque") if loaded else 0) + s("own_torque")
        weights += s("own_force")
    if "load_2" in parts:
        total += s("load_2_torque")
    result.append(s("total_torque") - total)
    result.append(s("net_torque") - sympy.Abs(s("load_torque") - s("load_2_torque")))
    result.append(s("support_force") - (s("load_force") + s("effort_force")))
    result.append(s("joint_force") - (s("effort_force") - weights))

    result.append(s("ideal_advantage") - s("effort_arm") / s("load_arm"))
    result.append(s("effort_travel") - s("load_travel") * s("ideal_advantage"))
    result.append(s("actual_advantage") - s("load_force") / s("effort_force"))
    if "ideal" in given:
        result.append(s("actual_advantage") - s("ideal") * s("efficiency"))
    elif "effort_travel" in given and "load_travel" in given:
        result.append(s("effort_force") * s("effort_travel") - s("load_force") * s("load_travel"))
    else:
        if "effort_force" in given and "load_force" in given:
            result.append(s("efficiency") - s("actual_advantage") / s("ideal_advantage"))
        else:
            result.append(s("effort_torque") - s("total_torque"))
            if "effort_mass" in given:
                # Balanced weights: gravity stands on both sides and need not be stated.
                result.append(s("load_mass") * s("load_arm") - s("effort_mass") * s("effort_arm"))
    return [law for law in result if law is not None]


# Angles of limbs and trunk: measured from the horizontal or from the vertical.
FROM_HORIZONTAL = ["upper_arm_angle", "trunk_angle", "shank_angle", "thigh_angle"]
FROM_VERTICAL = ["from_vertical", "raised", "bend"]
BODY_NAMES = set(FROM_HORIZONTAL + FROM_VERTICAL) | {
    "ball", "spine", "hand_distance", "pulley_below", "below", "shoulder_torque", "effort_to_load"}


def limb_direction(given):
    """Unit vector along the limb from the joint outwards, x level and y up; the sign of y does not
    matter for weights."""
    for name in FROM_HORIZONTAL:
        if name in given:
            return sympy.Matrix([sympy.cos(symbol(name)), sympy.sin(symbol(name))])
    for name in FROM_VERTICAL:
        if name in given:
            return sympy.Matrix([sympy.sin(symbol(name)), -sympy.cos(symbol(name))])
    return sympy.Matrix([1, 0])


def weight(place, mass):
    return place, sympy.Matrix([0, -symbol(mass) * symbol("gravity")])


def pull_towards(place, target, size):
    away = target - place
    return place, size * away / sympy.sqrt(away.dot(away))


def forces_on_body(given, asked):
    """Every force as (place, force), origin in the joint that is asked about."""
    s = symbol
    along = limb_direction(given)
    if "forearm_angle" in given:
        # From the shoulder down along the upper arm to the elbow, then up along the forearm.
        upper = sympy.Matrix([sympy.cos(s("upper_arm_angle")), -sympy.sin(s("upper_arm_angle"))])
        fore = sympy.Matrix([sympy.cos(s("forearm_angle")), sympy.sin(s("forearm_angle"))])
        elbow = s("upper_arm_length") * upper if asked == "shoulder_torque" else 0 * upper
        forces = [weight(elbow + s("elbow_load_distance") * fore, "load_mass"),
                  weight(elbow + s("forearm_centre") * fore, "forearm_mass")]
        if asked == "shoulder_torque":
            forces.append(weight(s("upper_arm_centre") * upper, "upper_arm_mass"))
        return forces
    if "thigh_mass" in given:
        return [weight(s("thigh_centre") * along, "thigh_mass"),
                weight((s("thigh_length") + s("shank_centre")) * along, "shank_mass")]
    if "shoulders" in given:
        joint = s("spine") if "spine" in given else 0
        centre = s("upper_centre") if "upper_centre" in given else s("own_distance")
        return [weight((s("shoulders") - joint) * along, "load_mass"),
                weight((centre - joint) * along, "own_mass")]
    hand = s("load_distance") * along
    if "pulley_below" in given:
        pulley = sympy.Matrix([s("pulley_forward"), -s("pulley_below")])
        return [pull_towards(hand, pulley, s("load_force"))]
    if "stiffness" in given:
        anchor = sympy.Matrix([0, -s("below")])
        stretch = sympy.sqrt((hand - anchor).dot(hand - anchor)) - s("slack_length")
        return [pull_towards(hand, anchor, s("stiffness") * stretch)]
    if "hand_distance" in given:
        # Seen from above; the dumbbell's weight points into the sheet.
        angle = s("load_angle")
        return [(sympy.Matrix([s("hand_distance"), 0]),
                 s("load_force") * sympy.Matrix([-sympy.cos(angle), sympy.sin(angle)]))]
    if "ball" in given:
        total = (s("body_mass") + 2 * s("load_mass")) * s("gravity")
        return [(sympy.Matrix([s("ball"), 0]), sympy.Matrix([0, total / 2]))]
    if "effort_to_load" in given:
        return [(sympy.Matrix([s("load_arm"), 0]), sympy.Matrix([0, -s("load_force")]))]
    return [weight(hand, "load_mass"), weight(s("own_distance") * along, "own_mass")]


def body_formula(given, asked):
    """The torque about a joint is the sum of r × F over all that acts beyond it; a muscle at its arm
    balances it."""
    torque = sympy.Abs(sum(place[0] * force[1] - place[1] * force[0]
                           for place, force in forces_on_body(given, asked)))
    arguments = [symbol(name) for name in sorted(given)]
    if asked == "load_mass":
        # The torque grows with the mass in a straight line: two values of it are enough.
        without = torque.subs(symbol("load_mass"), 0)
        of_one_kg = torque.subs(symbol("load_mass"), 1) - without
        solutions = [(symbol("shoulder_torque") - without) / of_one_kg]
        return sympy.lambdify(arguments, solutions[0], "math")
    if asked == "effort_force":
        arm = symbol("effort_arm")
        if "effort_to_load" in given:
            arm = symbol("load_arm") + symbol("effort_to_load")
        return sympy.lambdify(arguments, torque / arm, "math")
    if not asked.endswith("_torque"):
        return None
    return sympy.lambdify(arguments, torque, "math")


def of_its_own(given, asked):
    """What stands for itself: a law of one line for a quantity that no other question asks for. The
    names in `given` tell two meanings of one name apart."""
    s = symbol
    weight_of_load = s("load_mass") * s("gravity")
    laws_by_name = {
        # An arc is its radius times its angle (OpenStax College Physics 2e, section 6.1).
        "lengthening": ({"turn"}, s("effort_arm") * s("turn")),
        # Newton's second law (section 4.3), upward positive.
        "hand_force": ({"speeding_up"}, weight_of_load + s("load_mass") * s("speeding_up")),
        # On the point of tipping all of the ground's push is at the edge (section 9.3).
        "effort_force": ({"width", "height"},
                         s("own_mass") * s("gravity") * s("width") / 2 / s("height")),
        "load_distance": ({"overhang"},
                          s("own_mass") * (s("lever_length") / 2 - s("overhang")) / s("body_mass")),
        # A rope over a smooth pulley has one tension (section 4.5).
        "pull": ({"slant"}, weight_of_load),
        "plate_force": ({"load_2_arm"}, s("load_force") * s("load_arm") / s("load_2_arm")),
        "right_peg": ({"left_peg"}, s("left_blocks") * s("left_peg") / s("right_blocks")),
        "extra": ({"bare_arm"}, s("effort_arm") / s("bare_arm") - 1),
        # Counting, no law.
        "all_seconds": ({"repetitions"}, s("set_count") * s("repetitions") *
                        (s("lowering") + s("pause") + s("lifting"))),
    }
    if "hip_bend" in given:
        # The hip bends and lengthens what passes behind it, the knee bends and shortens it.
        laws_by_name["lengthening"] = (
            {"knee_bend"}, s("hip_arm") * s("hip_bend") - s("knee_arm") * s("knee_bend"))
    if "rope_ratio" in given:
        # So many parts of one rope carry the stack together (section 9.5).
        laws_by_name["pull"] = ({"load_mass"}, weight_of_load / s("rope_ratio"))
    names, expression = laws_by_name.get(asked, (None, None))
    if names is None or not names <= given:
        return None
    return sympy.lambdify([symbol(name) for name in sorted(given)], expression, "math")


def formula(given, asked):
    """Solves the laws for what is asked, one unknown at a time."""
    known = {symbol(name): symbol(name) for name in given}
    wanted = symbol(asked)
    open_laws = laws(given, asked)
    while wanted not in known:
        for law in open_laws:
            unknown = [s for s in law.free_symbols if s not in known]
            if len(unknown) != 1:
                continue
            solutions = sympy.solve(law.subs({s: v for s, v in known.items() if s != v}), unknown[0])
            if not solutions:
                continue
            known[unknown[0]] = solutions[-1] if len(solutions) > 1 else solutions[0]
            if len(solutions) > 1 and asked == "lever_angle":
                known[unknown[0]] = min(solutions, key=lambda e: len(str(e)))
            open_laws.remove(law)
            break
        else:
            return None
    arguments = [symbol(name) for name in sorted(given)]
    return sympy.lambdify(arguments, known[wanted], "math")


def main():
    program = sys.argv[1]
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 13000
    out = subprocess.run([program, "generate", "--count", str(count), "--seed", "20261125", "--json"],
                         check=True, capture_output=True, text=True).stdout
    formulas = {}
    checked = collections.Counter()
    failures = []
    for question in json.loads(out)["questions"]:
        if question["kind"] != "numeric":
            continue
        values = {g["name"]: g["value"] * UNITS[g["unit"]] for g in question["given"]
                  if g["name"] not in IGNORED}
        if "speeding_up" in values and " downward" in question["prompt"]:
            values["speeding_up"] *= -1.0  # its direction stands in words
        asked = question["asked"]
        key = (frozenset(values), asked)
        if key not in formulas:
            of_body = BODY_NAMES & set(values) or "forearm_angle" in values
            formulas[key] = of_its_own(set(values), asked) or (
                body_formula if of_body else formula)(set(values), asked)
        if formulas[key] is None:
            failures.append(f"{question['code']} {question['family']}: no law for {asked} "
                            f"from {sorted(values)}")
            continue
        answer = formulas[key](*[values[name] for name in sorted(values)]) / UNITS[question["unit"]]
        # The program prints 12 figures; a chain of ten roundings stays far below 1e-9.
        if abs(answer - question["answer"]) > 1e-9 * max(1.0, abs(answer)):
            failures.append(f"{question['code']} {question['family']}: {question['answer']} "
                            f"{question['unit']}, recomputed {answer}")
        checked[question["family"]] += 1
    for failure in failures[:20]:
        print(failure)
    print(f"{sum(checked.values())} numeric questions of {len(checked)} families recomputed from "
          f"{len(formulas)} formulas, {len(failures)} disagree.")
    if failures or sum(checked.values()) < min(count, 5000):
        sys.exit(1)


if __name__ == "__main__":
    main()
