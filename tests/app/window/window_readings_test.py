"""The bench in the real window: what is read follows what is done."""

import json

from shown_quantity import agrees
from window_case import WindowTest


class Readings(WindowTest):
    """What is read follows what is done."""

    def check_readings(self, bench, frame):
        """Every reading is the solver's number for the kept setup, to the digits shown."""
        truth = bench.solved()
        shown = frame.readings()
        expected = {
            "Effort": truth["effort_N"],
            "Effort arm": truth["effort_arm_m"],
            "Load arm": truth["load_arm_m"],
            "Load torque": abs(truth["load_torque_Nm"]),
            "Actual advantage": truth["actual_advantage"],
            "Axis reaction": truth["reaction_N"],
            "Mechanical advantage": truth["ideal_advantage"],
        }
        for name, value in expected.items():
            self.assertIn(name, shown)
            self.assertTrue(agrees(shown[name], value), f"{name}: shown {shown[name]}, is {value}")
        words = {1: "First class", 2: "Second class", 3: "Third class", None: "No class"}
        self.assertTrue(frame.says(words[truth["lever_class"]]))
        # The drawing says the same as the column.
        self.assertTrue(frame.says("load torque " + shown["Load torque"]))
        self.assertTrue(frame.says("moment arm " + shown["Effort arm"]))
        self.assertGreaterEqual(frame.texts.count(shown["Effort"]), 2)

    def test_every_reading_follows_a_dragged_load_in_both_unit_systems(self):
        bench = self.open_seesaw()
        start = bench.frame()
        self.check_readings(bench, start)
        dragged = bench.drag("heavier child place", 90)
        self.assertNotEqual(dragged.readings(), start.readings())
        self.check_readings(bench, dragged)
        heavier = bench.drag("heavier child tip", 0, -35)
        self.assertNotEqual(heavier.readings(), dragged.readings())
        self.check_readings(bench, heavier)
        in_us_units = bench.press("u")
        self.assertTrue(in_us_units.readings()["Effort"].endswith("lbf"))
        self.check_readings(bench, in_us_units)
        moved = bench.drag("axis place", -60)
        self.assertNotEqual(moved.readings(), in_us_units.readings())
        self.check_readings(bench, moved)

    def test_undo_restores_the_earlier_readings_exactly_and_redo_the_later_ones(self):
        bench = self.open_seesaw()
        start = bench.frame()
        first = bench.drag("heavier child place", 90)
        second = bench.drag("lighter child place", -120)
        self.assertEqual(len({json.dumps(f.readings()) for f in (start, first, second)}), 3)
        self.assertEqual(bench.press("ctrl+z").readings(), first.readings())
        self.assertEqual(bench.click_word("Undo").readings(), start.readings())
        self.assertEqual(bench.frame().data["grips"], start.data["grips"])
        self.check_readings(bench, bench.frame())
        self.assertEqual(bench.press("ctrl+y").readings(), first.readings())
        self.assertEqual(bench.click_word("Redo").readings(), second.readings())
        self.check_readings(bench, bench.frame())

    def test_keys_nudge_the_chosen_part(self):
        bench = self.open_seesaw()
        start = bench.solved()
        frame = bench.press("Left")  # the effort is chosen at the start
        self.check_readings(bench, frame)
        self.assertAlmostEqual(start["effort_arm_m"] - bench.solved()["effort_arm_m"], 0.01)
        bench.press("shift+Left")
        self.assertAlmostEqual(start["effort_arm_m"] - bench.solved()["effort_arm_m"], 0.11)
        bench.press("ctrl+Right")  # one degree clockwise, so the pull is oblique
        self.check_readings(bench, bench.frame())
        self.assertLess(bench.solved()["effort_arm_m"], start["effort_arm_m"] - 0.11)

    def test_a_number_is_typed_with_any_unit(self):
        bench = self.open_seesaw()
        start_m = bench.solved()["load_arm_m"]
        frame = bench.type_into("heavier child place", "25 in")
        self.check_readings(bench, frame)
        self.assertAlmostEqual(bench.solved()["load_arm_m"], start_m + 0.4 - 25 * 0.0254)
        frame = bench.type_into("heavier child tip", "80 lb")
        self.check_readings(bench, frame)
        self.assertAlmostEqual(
            abs(bench.solved()["load_torque_Nm"]),
            80 * 0.45359237 * 9.80665 * bench.solved()["load_arm_m"], places=9)

    def test_a_wrong_number_is_answered_with_a_sentence_and_changes_nothing(self):
        bench = self.open_seesaw()
        before = bench.frame().readings()
        for wrong, about in (("3 kg", "length"), ("about there", "number"), ("2,300 m", "2,300")):
            frame = bench.type_into("heavier child place", wrong)
            said = " ".join(frame.texts)
            self.assertIn(about, said)
            self.assertEqual(frame.readings(), before)
            bench.press("Escape")
            frame = bench.aside()
            self.assertEqual(frame.readings(), before)
        self.assertFalse(bench.frame().says("about there"))
        bench.type_into("heavier child tip", "1e30 kg")  # a mass, but an absurd one
        self.assertEqual(bench.frame().readings(), before)
        self.assertTrue(bench.frame().says("That cannot be"))

    def test_zooming_and_panning_leave_the_readings_alone(self):
        bench = self.open_seesaw()
        start = bench.frame()
        bench.act("mousemove", 300, 300)
        nearer = bench.act("click", 4)
        self.assertNotEqual(nearer.grip("axis place"), start.grip("axis place"))
        bench.act("click", "--repeat", 3, 5)
        bench.act("mousedown", 3, "mousemove", 340, 320)
        bench.act("mouseup", 3)
        moved = bench.aside()
        self.assertEqual(moved.readings(), start.readings())
        self.assertNotEqual(moved.grip("axis place"), start.grip("axis place"))
        home = bench.press("Home")
        self.assertEqual(home.grip("axis place"), start.grip("axis place"))

    def test_an_effort_by_hand_says_who_wins_and_tilts_the_lever(self):
        bench = self.open_seesaw()
        level = bench.frame()
        self.assertTrue(level.says("balanced"))
        taken = bench.click_word("Set the effort by hand")
        self.assertTrue(taken.says("balanced"))
        self.assertEqual(taken.readings()["Effort, by hand"], level.readings()["Effort"])
        weaker = bench.press("shift+Down")
        self.assertTrue(weaker.says("the load wins"))
        stronger = bench.press("shift+Up", "shift+Up")
        self.assertTrue(stronger.says("the effort wins"))
        self.assertLess(weaker.grip("lighter child place")[1], level.grip("lighter child place")[1])
        self.assertGreater(stronger.grip("lighter child place")[1],
                           level.grip("lighter child place")[1])
        given_back = bench.click_word("Find the effort for me")
        self.assertTrue(given_back.says("balanced"))
        self.assertEqual(given_back.readings(), level.readings())
        self.assertEqual(given_back.grip("lighter child place"), level.grip("lighter child place"))

    def test_a_reading_unfolds_how_it_was_computed(self):
        bench = self.open_seesaw()
        closed = bench.frame()
        number = closed.readings()["Effort"].split()[0]
        opened = bench.click_word("Effort arm")
        self.assertGreater(len(opened.texts), len(closed.texts))
        self.assertEqual(bench.click_word("Effort arm").texts, closed.texts)
        opened = bench.click_word("Effort")
        steps = " ".join(text for text in opened.texts if text not in closed.texts)
        self.assertIn(number, steps)

    def test_another_lever_is_taken_from_the_shelf(self):
        bench = self.open_seesaw()
        shelf = bench.click_word("Levers")
        names = [entry for entry in shelf.data["texts"] if entry["text"] == "Wheelbarrow"]
        if names and names[0]["y"] < 700:
            frame = bench.click_word("Wheelbarrow")
        else:
            bench.act("mousemove", 640, 500)
            for _ in range(40):
                x, y = bench.frame().place_of("Wheelbarrow")
                if y < 640:
                    break
                bench.act("click", 5)
            frame = bench.click_word("Wheelbarrow")
        self.assertTrue(frame.says("Second class"))
        self.check_readings(bench, frame)
        self.assertTrue(bench.press("ctrl+z").says("Second class"))  # never into another lever
        bench.press("o")
        self.assertTrue(bench.press("Escape").says("Second class"))

    def test_a_question_like_the_lever_shows_its_steps_and_leads_back(self):
        bench = self.open_seesaw()
        start = bench.frame()
        asked = bench.click_word("Ask me one like this")
        self.assertTrue(asked.says("Check"))
        self.assertTrue(asked.says("code "))
        self.assertNotIn("Answer: ", " ".join(asked.texts))
        frame = asked
        for words in ["Show me the first step",
                      *["Show how it comes out", "Show me the next step"] * 15, "I do not know"]:
            if words in frame.texts:
                frame = bench.click_word(words)
        self.assertTrue(frame.says("Next question"))
        self.assertTrue(frame.says("Answer: "))
        back = bench.click_word("Back to the bench")
        self.assertEqual(back.readings(), start.readings())
