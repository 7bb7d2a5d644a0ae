"""Building and keeping a lever of one's own in the real window, from nothing and by hand."""

import json
import subprocess

from window_case import WindowTest


class Own(WindowTest):
    """What people make is kept, found again and taken along."""

    def own_files(self, bench):
        return sorted(path.name for path in (bench.folder / "steelyard" / "setups").glob("*.toml"))

    def solve(self, bench, name):
        """What the terminal says of an own setup, by the name of its file."""
        out = subprocess.run([self.program, "solve", "--json", name], check=True,
                             capture_output=True, env=bench.environment).stdout
        return json.loads(out)

    def keep(self, bench, name):
        """Keeps what is on the stage under a name."""
        bench.press("ctrl+s", "ctrl+a")
        bench.act("type", "--delay", 30, name)
        return bench.press("Return")

    def begin_a_lever(self):
        bench = self.open_seesaw()
        bench.click_word("Levers")
        bench.click_word("New lever")
        return bench

    def test_a_bent_lever_is_built_from_nothing_and_solved_by_the_terminal_alike(self):
        bench = self.begin_a_lever()
        longer = bench.drag("end of the lever place", 90)
        bench.click_word("add a corner")
        bent = bench.drag("corner 1 place", 0, -70)
        self.assertNotEqual(bent.readings(), longer.readings())
        bench.drag("effort tip", 60, 10)
        bench.type_into("load tip", "12 kg")
        shown = bench.frame().readings()
        frame = self.keep(bench, "My pedal")
        self.assertTrue(frame.says("My pedal"))
        self.assertEqual(self.own_files(bench), ["my-pedal.setup.toml"])
        self.assertEqual(bench.frame().readings(), shown)
        self.assertEqual(self.solve(bench, "my-pedal"), bench.solved())
        listed = subprocess.run([self.program, "list", "setups"], check=True, text=True,
                                capture_output=True, env=bench.environment).stdout
        self.assertEqual(listed.split("\n")[0].split(), ["my-pedal", "My", "pedal"])

    def test_what_is_kept_stands_first_on_the_shelf_and_is_found_by_its_name(self):
        bench = self.begin_a_lever()
        self.keep(bench, "Zebra plank")
        bench.press("o")
        shelf = bench.frame()
        names = [text for text in shelf.texts if text in ("Zebra plank", "Seesaw")]
        self.assertEqual(names[0], "Zebra plank")
        found = bench.click_word("Zebra plank")
        self.assertTrue(found.says("Zebra plank"))

    def test_keeping_again_changes_the_file_and_another_name_renames_it(self):
        bench = self.begin_a_lever()
        self.keep(bench, "Plank")
        first = self.solve(bench, "plank")
        bench.drag("axis place", -60)
        bench.press("ctrl+s", "Return")
        self.assertNotEqual(self.solve(bench, "plank"), first)
        self.assertEqual(self.solve(bench, "plank"), bench.solved())
        self.keep(bench, "Longer plank")
        self.assertEqual(self.own_files(bench), ["longer-plank.setup.toml"])

    def test_a_name_that_is_taken_is_answered_with_a_sentence(self):
        bench = self.begin_a_lever()
        self.keep(bench, "Plank")
        bench.click_word("Levers")
        bench.click_word("New lever")
        frame = self.keep(bench, "plank")
        self.assertTrue(frame.says("There is one called plank among yours"))
        bench.press("Escape")
        self.assertEqual(self.own_files(bench), ["plank.setup.toml"])

    def test_a_removed_one_is_put_back_by_a_click(self):
        bench = self.begin_a_lever()
        self.keep(bench, "Plank")
        bench.press("o")
        bench.click_word("remove")
        self.assertEqual(self.own_files(bench), [])
        bench.click_word("Put back what was removed")
        self.assertEqual(self.own_files(bench), ["plank.setup.toml"])

    def test_what_was_changed_and_not_kept_can_be_taken_up_again(self):
        bench = self.open_seesaw()
        changed = bench.drag("heavier child place", 90).readings()
        bench.click_word("Levers")
        bench.click_word("New lever")
        self.assertFalse(bench.press("ctrl+z").says("heavier child"))
        bench.press("o")
        self.assertTrue(bench.frame().says("As you left it"))
        back = bench.press("Return")
        self.assertEqual(back.readings(), changed)

    def test_an_own_setup_stays_its_own_over_a_kill(self):
        bench = self.begin_a_lever()
        self.keep(bench, "Plank")
        bench.saved()
        bench.kill()
        again = self.open()
        again.drag("axis place", -60)
        again.press("ctrl+s", "Return")
        self.assertEqual(self.own_files(again), ["plank.setup.toml"])
        self.assertEqual(self.solve(again, "plank"), again.solved())

    def test_an_exercise_is_kept_with_what_was_changed(self):
        bench = self.open(self.setups / "body" / "lateral-raise-straight.setup.toml")
        self.keep(bench, "My raise")
        self.assertEqual(self.own_files(bench), ["my-raise.setup.toml"])
        bench.press("o")
        self.assertTrue(bench.frame().says("My raise"))

    def test_a_picture_can_be_square_and_see_through(self):
        bench = self.open_seesaw()
        bench.press("ctrl+s")
        bench.click_word("square")
        bench.click_word("see-through")
        bench.click_word("PNG")
        pictures = bench.folder / "steelyard" / "pictures"
        bench.wait(lambda: list(pictures.glob("*.png")), "the picture")
        bench.wait(lambda: bench.frame().says("Written:"), "it to be said where it is")
        picture, = pictures.glob("*.png")
        read = subprocess.run(["identify", "-format", "%Wx%H %[opaque]", str(picture)], check=True,
                              text=True, capture_output=True).stdout
        self.assertEqual(read.lower(), "1080x1080 false")

    def test_an_exercise_is_found_by_what_it_needs_and_by_its_plane(self):
        bench = self.open(self.setups / "body" / "curl-dumbbell.setup.toml")
        bench.press("o")
        bench.click(1130, 32)  # the line to search in
        bench.act("type", "--delay", 30, "kettlebell frontal")
        frame = bench.frame()
        self.assertTrue(frame.says("Suitcase carry"))
        self.assertFalse(frame.says("Kettlebell swing"))

    def test_a_picture_and_a_moving_one_are_taken_along(self):
        bench = self.open(self.setups / "body" / "lateral-raise-straight.setup.toml")
        bench.press("ctrl+s")
        for word, name, frames in (("SVG", "*.svg", None), ("moving picture (GIF)", "*.gif", 50)):
            bench.click_word(word)
            pictures = bench.folder / "steelyard" / "pictures"
            bench.wait(lambda: list(pictures.glob(name)), f"the {word}")
            bench.wait(lambda: bench.frame().says("Written:"), "it to be said where it is")
            picture, = pictures.glob(name)
            if frames:
                read = subprocess.run(["identify", "-format", "%Wx%H\n", str(picture)], check=True,
                                      text=True, capture_output=True).stdout.split()
                self.assertEqual(set(read), {"1280x720"})
                self.assertGreater(len(read), frames)
