"""Making exercises of one's own in the real window, from a stance and by hand."""

import re
import subprocess

from window_case import WindowTest


class Build(WindowTest):
    """A coach makes exercises in the window; the terminal solves what was kept alike."""

    def begin(self, stance):
        bench = self.open(self.setups / "body" / "curl-dumbbell.setup.toml")
        bench.click_word("Exercises")
        bench.click_word("New exercise")
        bench.click_word(stance)
        return bench

    def keep(self, bench, name):
        bench.press("ctrl+s", "ctrl+a")
        bench.act("type", "--delay", 30, name)
        bench.press("Return")
        stem = name.lower().replace(" ", "-")
        path = bench.folder / "steelyard" / "setups" / f"{stem}.setup.toml"
        self.assertTrue(path.exists())
        return path

    def solved(self, bench, path):
        """What the terminal says of a file, its spaces like those of the window."""
        out = subprocess.run([self.program, "solve", str(path)], check=True, text=True,
                             capture_output=True, env=bench.environment).stdout
        return out.replace("\u00a0", " ")

    def test_a_split_squat_with_two_dumbbells_is_made_from_a_stance(self):
        bench = self.begin("Split stance")
        bench.click_word("Add a load")
        frame = bench.click_word("one in each hand")
        self.assertTrue(frame.says("left dumbbell"))
        bench.click_word("Movement")
        bench.click_word("moves")
        bench.click_word("the end")
        bench.drag("right hip place", 0, -60)
        path = self.keep(bench, "My split squat")
        text = path.read_text(encoding="utf-8")
        self.assertEqual(text.count('kind = "dumbbell"'), 2)
        self.assertIn("[path]", text)
        self.assertNotIn("topple", self.solved(bench, path))

    def test_a_dumbbell_becomes_a_cable_whose_pulley_is_dragged(self):
        bench = self.begin("Standing")
        bench.click_word("Add a load")
        bench.click_word("right hand")
        frame = bench.click_word("cable")
        self.assertTrue(frame.says("cable"))
        before = bench.frame().grip("pulley of the cable place")
        bench.drag("pulley of the cable place", 40, 80)
        after = bench.frame().grip("pulley of the cable place")
        self.assertGreater(before[1] - after[1], 40)
        path = self.keep(bench, "My cable")
        text = path.read_text(encoding="utf-8")
        self.assertIn('kind = "cable"', text)
        self.assertNotIn('kind = "dumbbell"', text)
        # Held still, so that the terminal and the window speak of the same moment.
        line = re.search("Torque of the muscles: (.*)", self.solved(bench, path)).group(1)
        shown = [one.replace("\u00a0", " ") for one in bench.press("m").texts]
        for torque in re.findall(r"[\d.]+ N·m", line):
            self.assertTrue(any(torque in one for one in shown), torque)

    def test_every_step_is_undone(self):
        bench = self.begin("Seated")
        begun = bench.frame()
        bench.click_word("Add a load")
        bench.click_word("right ankle")
        bench.click_word("Movement")
        bench.click_word("moves")
        self.assertTrue(bench.frame().says("cuff"))
        bench.press("ctrl+z")
        bench.press("ctrl+z")
        self.assertFalse(bench.frame().says("cuff"))
        self.assertTrue(begun.says("holds still"))
        bench.press("ctrl+y")
        self.assertTrue(bench.frame().says("cuff"))

    def test_another_person_is_typed_and_an_impossible_one_refused(self):
        bench = self.begin("On hands and toes")
        bench.click_word("Person")
        frame = bench.click_word("man")
        self.assertTrue(frame.says("man, 1.70"))
        bench.click_word("height")
        bench.press("ctrl+a")
        bench.act("type", "--delay", 30, "1.92 m")
        frame = bench.press("Return")
        self.assertTrue(frame.says("man, 1.92"))
        bench.click_word("height")
        bench.press("ctrl+a")
        bench.act("type", "--delay", 30, "9 m")
        frame = bench.press("Return")
        self.assertTrue(frame.says("man, 1.92"))
        self.keep(bench, "My press")

    def type_chip(self, bench, word, text):
        """Presses the last number of that name in the column and types another."""
        entry = [one for one in bench.frame().data["texts"]
                 if one["text"] == word and one["x"] > 940.0][-1]
        bench.click(round(entry["x"] + 0.5 * entry["width"]), round(entry["y"]) - 4)
        bench.press("ctrl+a")
        bench.act("type", "--delay", 30, text)
        return bench.press("Return")

    def test_the_mass_of_a_part_is_given_and_taken_back(self):
        bench = self.begin("Seated")
        bench.click_word("Person")
        frame = self.type_chip(bench, "hand", "0")
        self.assertTrue(frame.says("parts as the table has them"))
        self.assertIn("0\u00a0kg", frame.texts)
        frame = self.type_chip(bench, "forearm", "4 lb")
        self.assertIn("1.81\u00a0kg", frame.texts)
        path = self.keep(bench, "My light hand")
        self.assertIn("[[body.measured]]", path.read_text(encoding="utf-8"))
        self.assertIn("4.00\u00a0lb", bench.press("u").texts)
        bench.press("u")
        frame = bench.click_word("parts as the table has them")
        self.assertFalse(frame.says("parts as the table has them"))
        self.assertTrue(bench.press("ctrl+z").says("parts as the table has them"))

    def test_the_moment_arm_of_a_muscle_is_given_where_it_is_read(self):
        bench = self.open(self.setups / "body" / "triceps-pushdown.setup.toml")
        bench.press("ctrl+minus", "ctrl+minus")
        bench.click_word("Muscles pull")
        bench.act("mousemove", 1100, 400)
        bench.act("click", "--repeat", 4, 5)  # the wheel: the row unfolds below
        entry = next(one for one in bench.frame().data["texts"]
                     if one["text"] == "triceps" and one["x"] > 940.0)
        self.assertLess(entry["y"], 640.0, "above the button at the column's foot")
        bench.click(round(entry["x"] + 0.5 * entry["width"]), round(entry["y"]) - 4)
        bench.press("ctrl+a")
        bench.act("type", "--delay", 30, "1 in")
        frame = bench.press("Return")
        self.assertTrue(frame.says("triceps (given)"))
        self.assertTrue(any(text.startswith("2.54") for text in frame.texts), frame.texts)
        self.assertTrue(any("given" in text and "Moment arm" in text for text in frame.texts))
        frame = bench.click_word("Moment arms as on file")
        self.assertFalse(frame.says("triceps (given)"))
        self.assertTrue(bench.press("ctrl+z").says("triceps (given)"))

    def test_a_stance_is_changed_and_the_readings_are_one_key_away(self):
        bench = self.begin("Standing")
        frame = bench.press("m")
        self.assertFalse(frame.says("Carried by"))
        frame = bench.press("m")
        self.assertTrue(frame.says("Carried by"))
        bench.click_word("Carried by")
        frame = bench.click_word("Half kneeling")
        self.assertTrue(frame.says("right foot, left knee"))

    def test_a_joint_is_shown_near_by_and_left_again(self):
        bench = self.open(self.setups / "body" / "curl-dumbbell.setup.toml")
        self.assertFalse(bench.frame().says("effort in the middle: third class"))
        frame = bench.press("c")
        self.assertTrue(frame.says("effort in the middle: third class"))
        self.assertTrue(frame.says("moment arm, brachialis"))
        self.assertTrue(frame.says("Place axis, effort and load by hand"))
        frame = bench.click_word("Whole body")
        self.assertFalse(frame.says("effort in the middle: third class"))
        frame = bench.click_word("Close-up")
        self.assertTrue(frame.says("effort in the middle: third class"))

    def test_a_joint_is_taken_to_the_bench_where_all_three_are_placed(self):
        bench = self.open(self.setups / "body" / "curl-dumbbell.setup.toml")
        torque = next(text for text in bench.frame().texts if text.endswith("N·m"))
        frame = bench.click_word("Place axis, effort and load by hand")
        self.assertTrue(frame.says("right elbow"))
        self.assertTrue(frame.says("Third class"))
        self.assertTrue(any(text == torque for text in frame.texts), torque)
        for grip, along in (("axis place", 60), ("brachialis place", 20), ("dumbbell place", -40)):
            before = bench.frame().readings()
            bench.drag(grip, along)
            self.assertNotEqual(bench.frame().readings(), before, grip)
        self.assertTrue(bench.frame().says("Only to think with"))
        # Back on the body the exercise stands as it was left.
        self.assertTrue(bench.click_word("Body").says("Play the repetition"))
