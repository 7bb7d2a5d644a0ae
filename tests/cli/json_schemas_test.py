"""Every JSON that the program writes, against its schema: json_schemas_test.py PROGRAM SCHEMAS

Judged by python3-jsonschema (JSON Schema draft 2020-12) and, digit by digit, by Python's own shortest
numbers. Ends with 77, which ctest reports as skipped, where that library is missing."""

import copy
import json
import os
import pty
import subprocess
import sys
import tempfile
import unittest
from decimal import Decimal
from pathlib import Path

try:
    from jsonschema import Draft202012Validator, FormatChecker
except ImportError:
    print("Skipped: JSON is not validated here. Install python3-jsonschema to validate it.")
    sys.exit(77)

PROGRAM, SCHEMAS = Path(sys.argv[1]), Path(sys.argv[2])

TRIED = {
    "solve": [["solve", "crowbar"], ["solve", "curl-dumbbell", "--sweep"], ["solve", "calf-raise"]],
    "whatif": [
        ["whatif", "curl-dumbbell", "--joint", "elbow_flexion", "--torque", "20Nm", "--change", "load"],
        ["whatif", "crate-far", "--joint", "lumbar", "--torque", "500 Nm", "--change", "distance"],
        ["whatif", "crate-far", "--joint", "lumbar", "--less", "20 %"],
        ["whatif", "crate-far", "--joint", "lumbar", "--less", "10 %", "--keep", "elbow_flexion"],
        ["whatif", "crate-far", "--joint", "lumbar", "--feasible", "--change", "load", "--cap",
         "lumbar_flexion=60 Nm"]],
    "generate": [["generate", "--count", "300", "--seed", "5"], ["generate", "--count", "0"]],
    "mark": [],  # by codes that generate gives
    "list": [["list", what] for what in ("setups", "exercises", "lessons", "families", "skills",
                                         "blueprints", "units", "terms")],
    "bank-list": [["bank", "list"]],
    "bank-check": [["bank", "check", "--instances", "5"]],
    "progress": [],  # of a record that is made for it
}
ROWS = ("generate", "list", "bank-list", "bank-check")


def said(*words, typed=None):
    return subprocess.run([PROGRAM, *words], check=True, capture_output=True, input=typed).stdout


def number(token):
    """A number as it is written: the fewest digits that read back to it, and never -0."""
    value = float(token)
    digits = len(Decimal(token).normalize().as_tuple().digits)
    if digits > len(Decimal(repr(value)).normalize().as_tuple().digits):
        raise ValueError(f"{token} is longer than {value!r}")
    if value == 0 and token != "0":
        raise ValueError(f"{token} for 0")
    return value if "." in token or "e" in token else int(token)


def no_number(token):
    raise ValueError(token)


def once(pairs):
    if len(dict(pairs)) < len(pairs):
        raise ValueError("a key twice")
    return dict(pairs)


def parsed(text):
    return json.loads(text, parse_float=number, parse_int=number, parse_constant=no_number,
                      object_pairs_hook=once)


def validator(verb):
    schema = json.loads((SCHEMAS / f"{verb}.schema.json").read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema, format_checker=FormatChecker())


class Schemas(unittest.TestCase):
    """What the program writes for other programs."""

    def check(self, verb, text, format_name=None):
        value = parsed(text)
        fault = next(iter(validator(verb).iter_errors(value)), None)
        self.assertIsNone(fault, fault and f"{list(fault.absolute_path)}: {fault.message}")
        self.assertEqual(next(iter(value)), "format")
        self.assertEqual(value["format"], format_name or f"steelyard.{verb}/1")
        return value

    def check_lines(self, verb, text):
        for line in text.splitlines():
            self.check(verb, line, f"steelyard.{verb}.row/1")

    def test_every_output_is_valid_by_its_schema(self):
        for verb, commands in TRIED.items():
            for command in commands:
                with self.subTest(command=command):
                    self.check(verb, said(*command, "--json"))
                    if verb in ROWS:
                        self.check_lines(verb, said(*command, "--jsonl"))

    def test_rows_are_those_of_the_document(self):
        whole = parsed(said("generate", "--count", "20", "--json"))["questions"]
        rows = [parsed(line) for line in said("generate", "--count", "20", "--jsonl").splitlines()]
        for row in rows:
            del row["format"]
        self.assertEqual(rows, whole)

    def test_every_setup_is_solved_to_valid_json(self):
        for kind in ("setups", "exercises"):
            for one in parsed(said("list", kind, "--json"))[kind]:
                with self.subTest(setup=one["name"]):
                    self.check("solve", said("solve", one["name"], "--json"))

    def test_every_mark_is_valid(self):
        questions = parsed(said("generate", "--count", "12", "--seed", "2", "--json"))["questions"]
        for question in questions:
            answers = [question["answer_text"], "?", "5 kg", "B",
                       *(str(wrong) for wrong in list(question["wrong_rules"].values())[:1])]
            for answer in answers:
                with self.subTest(code=question["code"], answer=answer):
                    mark = self.check("mark", said("mark", question["code"], answer, "--json"))
                    self.assertEqual(mark["code"], question["code"])

    def test_progress_is_valid_before_and_after_answers(self):
        with tempfile.TemporaryDirectory() as folder:
            ada = ["--data", folder, "--learner", "Ada"]
            self.check("progress", said("progress", *ada, "--new", "--json"))
            keyboard, terminal = pty.openpty()  # who answers sits at a terminal
            os.write(keyboard, b"?\n" * 5)
            subprocess.run([PROGRAM, "quick", *ada], stdin=terminal, check=True, capture_output=True)
            os.close(keyboard)
            os.close(terminal)
            after = self.check("progress", said("progress", *ada, "--json"))
            self.assertEqual(after["answers"], 5)

    def test_every_verb_with_json_has_a_schema_that_is_tried(self):
        verbs = {line.split()[1] for line in said("--help").decode().splitlines()
                 if line.startswith("  steelyard ") and line.split()[1].islower()}
        with_json = set()
        for verb in verbs:
            shown = subprocess.run([PROGRAM, verb, "--help"], capture_output=True, check=False)
            if b"--json" in shown.stdout:
                with_json.add(verb)
        self.assertEqual(with_json, {verb.split("-")[0] for verb in TRIED})
        self.assertEqual({path.name for path in SCHEMAS.glob("*.json")},
                         {f"{verb}.schema.json" for verb in TRIED})

    def test_a_schema_refuses_what_it_does_not_describe(self):
        solved = parsed(said("solve", "crowbar", "--json"))
        for change in ("missing", "more", "wrong"):
            broken = copy.deepcopy(solved)
            if change == "missing":
                del broken["forces"][0]["torque_Nm"]
            elif change == "more":
                broken["colour"] = "red"
            else:
                broken["effort_arm_m"] = "1 m"
            self.assertTrue(list(validator("solve").iter_errors(broken)), change)

    def test_numbers_are_judged(self):
        for token in ("-0", "-0.0", "0.10000000000000000555", "40.00000000000000001"):
            with self.assertRaises(ValueError):
                parsed(token)
        self.assertEqual(parsed("[0, 0.1, 1e+22, -5, 0.30000000000000004]"),
                         [0, 0.1, 1e22, -5, 0.1 + 0.2])

    def test_a_lever_and_a_joint_call_the_same_by_the_same_name(self):
        lever = parsed(said("solve", "crowbar", "--json"))
        joint = parsed(said("solve", "curl-dumbbell", "--json"))["joints"]["right_elbow_flexion"]
        same = {"outcome", "effort_torque_Nm", "load_torque_Nm", "forces", "reaction_N",
                "reaction_vector_N"}
        self.assertLessEqual(same, lever.keys() & joint.keys())
        for reading in (lever, joint):
            for force in reading["forces"]:
                self.assertLessEqual({"name", "moment_arm_m", "torque_Nm"}, force.keys())
            self.assertAlmostEqual(sum(force["torque_Nm"] for force in reading["forces"]),
                                   reading["load_torque_Nm"], places=9)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
