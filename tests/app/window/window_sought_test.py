"""The bench in the real window where something else than the effort is sought."""

from shown_quantity import agrees
from window_case import WindowTest


class Sought(WindowTest):
    """A load that is found for a known effort, and a beam on two supports."""

    def says(self, frame, words):
        """Whether a frame says words, on one line or two."""
        return words in " ".join(frame.texts)

    def choose(self, bench, grip):
        x, y = bench.frame().grip(grip)
        return bench.click(round(x), round(y))

    def test_a_load_is_found_for_the_effort_that_is_known(self):
        bench = self.open_seesaw()
        before = bench.solved()
        self.choose(bench, "heavier child place")
        frame = bench.click_word("find its size")
        self.assertTrue(frame.says("Load found"))
        found = bench.solved()
        self.assertAlmostEqual(found["effort_N"], before["effort_N"], delta=1e-6)
        frame = bench.type_into("lighter child place", "200 N")
        truth = bench.solved()
        self.assertTrue(agrees(frame.rows()["Effort, known"], truth["effort_N"]))
        self.assertTrue(frame.says("found: "))
        self.assertGreater(truth["load_found_N"], 0.0)
        dragged = bench.drag("axis place", -40)
        self.assertNotEqual(bench.solved()["load_found_N"], truth["load_found_N"])
        self.assertTrue(dragged.says("Load found"))
        bench.press("ctrl+z")
        self.assertEqual(bench.solved()["load_found_N"], truth["load_found_N"])
        back = bench.click_word("Find the effort for me")
        self.assertTrue(back.says("Mechanical advantage"))
        self.assertNotIn("sought_load", bench.solved())

    def test_a_beam_tells_what_its_two_supports_bear_and_when_one_lifts_off(self):
        bench = self.open(self.setups / "plank-on-trestles.setup.toml")
        start = bench.frame()
        self.assertTrue(start.says("Two supports"))
        rows = start.rows()
        truth = bench.solved()
        self.assertTrue(agrees(rows["Push, left trestle"], truth["first_support_N"]))
        self.assertTrue(agrees(rows["Push, right trestle"], truth["second_support_N"]))
        self.assertFalse(self.says(start, "tips over"))
        out = bench.drag("varnisher place", 440)
        self.assertEqual(bench.solved()["outcome"], "first_support_lifts")
        self.assertTrue(self.says(out, "tips over right trestle"))
        nearer = bench.drag("right trestle place", 200)
        self.assertEqual(bench.solved()["outcome"], "ok")
        self.assertFalse(self.says(nearer, "tips over"))
        self.choose(bench, "left trestle place")
        one = bench.click_word("one axis")
        self.assertFalse(one.says("Two supports"))
        self.assertNotEqual(bench.solved()["lever_class_reason"], "two_supports")
