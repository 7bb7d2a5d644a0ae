"""Side by side in the real window."""

import json
import os
import re
import subprocess

from shown_quantity import agrees
from window_case import WindowTest


class SideBySide(WindowTest):
    """Two exercises beside each other, and one made to ask as much as the other."""

    # The pair that the place begins with.
    A, B = "hinge-bar-near", "hinge-bar-drifting"

    def open_pair(self):
        bench = self.open()
        bench.click_word("Side by side")
        return bench

    def whatif(self, *arguments):
        out = subprocess.run([self.program, "whatif", *arguments, "--json"], check=True,
                             capture_output=True).stdout
        return json.loads(out)

    @staticmethod
    def strip_torque(frame, side):
        """What the strip says of a side: "A, hardest at the hip 159 N·m"."""
        start = f"{side}, hardest at the "
        return re.sub(r"^\D*", "", next(t for t in frame.texts if t.startswith(start))[len(start):])

    def equal_load(self):
        """What B is to lift so that it asks the hip for as much as A, by the terminal's what-if."""
        return self.whatif(self.B, "--joint", "right_hip_flexion", "--equal", self.A,
                           "--change", "load")

    def test_numbers_are_those_of_what_if_and_equal_makes_them_meet(self):
        if os.environ.get("SANITIZED"):
            self.skipTest("trying every change takes minutes there; the release build tests it")
        truth = self.equal_load()
        bench = self.open_pair()
        frame = bench.frame()
        self.assertTrue(agrees(self.strip_torque(frame, "A"), truth["wanted_torque_Nm"]))
        self.assertTrue(agrees(self.strip_torque(frame, "B"), abs(truth["present_torque_Nm"])))
        bench.wait(lambda: bench.frame().says("Most natural first"), "the list of ways")
        bench.rest()
        mass_kg = truth["solutions"][0]["value"]
        row = next(t for t in bench.frame().texts if t.endswith(" instead of 40.0\u00a0kg"))
        self.assertTrue(agrees(row.split(" instead")[0], mass_kg), row)
        # Down as often as the terminal's list says, then take it.
        ways = self.whatif(self.B, "--joint", "right_hip_flexion", "--equal", self.A)["ways"]
        down = next(i for i, way in enumerate(ways) if way["change"] == "load") + 1
        bench.press(*["Down"] * down)
        frame = bench.press("Return")
        self.assertEqual(self.strip_torque(frame, "B"), self.strip_torque(frame, "A"))
        self.assertTrue(frame.says("equal"))
        weight = truth["solutions"][0]["value"] * 9.80665
        self.assertTrue(any(agrees(t, weight) for t in frame.texts if re.match(r"\d+\sN$", t)))
        # Undo gives the old B back, redo the new one.
        self.assertTrue(agrees(self.strip_torque(bench.press("ctrl+z"), "B"),
                               abs(truth["present_torque_Nm"])))
        self.assertTrue(bench.press("ctrl+y").says("equal"))

    def test_one_scrubber_moves_both_and_swapping_exchanges_them(self):
        bench = self.open_pair()
        start = bench.frame()
        self.assertTrue(start.says("at 0 % of the way"))
        x, y = start.grip("scrubber")
        end_x, _ = start.grip("end")
        half_way = bench.drag("scrubber", round(0.5 * (end_x - x)))
        self.assertTrue(half_way.says("at 50 % of the way"), half_way.texts)
        scrubbed = bench.press(*["shift+Right"] * 6)
        self.assertTrue(scrubbed.says("at 100 % of the way"), scrubbed.texts)
        for setup in (self.A, self.B):
            sweep = json.loads(subprocess.run([self.program, "solve", setup, "--sweep", "--json"],
                                              check=True, capture_output=True).stdout)
            hip = sweep["sweep"]["right_hip_flexion"]
            # A repetition begins and turns at rest, so that its torque there is the held one.
            turn = max(range(len(hip["progress"])), key=lambda i: hip["progress"][i])
            for frame, at in ((start, 0), (scrubbed, turn)):
                torque = abs(hip["effort_torque_Nm"][at])
                self.assertTrue(any(agrees(t, torque) for t in frame.texts
                                    if re.fullmatch(r"[\d.]+\s?N·m", t)), (setup, torque))
        a, b = self.strip_torque(scrubbed, "A"), self.strip_torque(scrubbed, "B")
        swapped = bench.press("x")
        self.assertEqual((self.strip_torque(swapped, "A"), self.strip_torque(swapped, "B")), (b, a))
        copied = bench.press("c")
        self.assertEqual(self.strip_torque(copied, "B"), b)
        self.assertTrue(copied.says("B asks as much as A"))

    def test_two_levers_take_the_solvers_effort_and_are_made_equal(self):
        bench = self.open_pair()
        frame = bench.press("v")
        for setup in ("launch-trolley", "wheelbarrow"):
            solved = json.loads(subprocess.run([self.program, "solve", setup, "--json"], check=True,
                                               capture_output=True).stdout)
            self.assertTrue(any(agrees(t, abs(solved["effort_N"])) for t in frame.texts
                                if re.fullmatch(r"[\d.\u2009]+\sN", t)), setup)
        efforts = [t for t in frame.texts if re.fullmatch(r"[\d.\u2009]+\sN", t)][:2]
        equal = bench.press("e")
        self.assertTrue(equal.says("B takes as much effort as A"), equal.texts)
        self.assertEqual([t for t in equal.texts if t == efforts[0]][:2], [efforts[0]] * 2)
        self.assertFalse(bench.press("ctrl+z").says("B takes as much effort as A"))

    def check_runs(self, bench):
        """Each drag of the selected dial is a step of its own, and so is a run of nudges."""
        def dial(frame):
            return round(frame.grip("dial")[0], 2)
        start = dial(bench.press("Down"))
        first = dial(bench.drag("dial", 70))
        second = dial(bench.drag("dial", -40))
        nudged = dial(bench.press("plus", "plus"))
        self.assertEqual(len({start, first, second, nudged}), 4)
        self.assertEqual(dial(bench.press("ctrl+z")), second)
        self.assertEqual(dial(bench.press("ctrl+z")), first)
        self.assertEqual(dial(bench.press("ctrl+z")), start)
        self.assertEqual(dial(bench.press("ctrl+y")), first)

    def test_every_run_at_the_dial_of_a_lever_is_undone_by_itself(self):
        bench = self.open_pair()
        bench.press("v")
        self.check_runs(bench)

    def test_every_run_at_the_dial_of_an_exercise_is_undone_by_itself(self):
        if os.environ.get("SANITIZED"):
            self.skipTest("trying every change takes minutes there; the release build tests it")
        bench = self.open_pair()
        bench.wait(lambda: bench.frame().says("Most natural first"), "the list of ways")
        bench.rest()
        self.check_runs(bench)

    def test_two_levers_come_back_after_a_kill(self):
        bench = self.open_pair()
        bench.press("v")
        swapped = bench.press("x")
        bench.saved()
        bench.kill()
        again = self.open()
        self.assertEqual(again.press("F5").texts, swapped.texts)

    def test_a_pair_comes_back_after_a_kill(self):
        bench = self.open_pair()
        swapped = bench.press("x")
        bench.saved()
        bench.kill()
        again = self.open_pair()
        for side in ("A", "B"):
            self.assertEqual(self.strip_torque(again.frame(), side),
                             self.strip_torque(swapped, side))
