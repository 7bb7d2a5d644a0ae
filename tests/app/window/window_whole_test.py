"""What belongs to the whole window: how it begins, what it keeps, how it looks."""

import os
import subprocess
import time
from pathlib import Path

from window_case import WindowTest
from window_driver import LONGEST_WAIT_S

# Colours of the looks: sheet, effort and load (Okabe and Ito 2008, "Color Universal Design").
LIGHT = {"sheet": (0xFB, 0xFA, 0xF7), "effort": (0x00, 0x72, 0xB2), "load": (0xD5, 0x5E, 0x00)}
DARK = {"sheet": (0x14, 0x18, 0x1D), "effort": (0x56, 0xB4, 0xE9), "load": (0xE6, 0x9F, 0x00)}
HIGH_CONTRAST = {"sheet": (0, 0, 0), "effort": (0x6E, 0xC6, 0xFF), "load": (0xFF, 0xB0, 0x00)}


def luminance(colour):
    """Source: WCAG 2.2, "relative luminance"."""
    def linear(channel):
        c = channel / 255.0
        return c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
    return sum(weight * linear(channel)
               for weight, channel in zip((0.2126, 0.7152, 0.0722), colour))


def contrast(one, other):
    """Source: WCAG 2.2, "contrast ratio"."""
    a, b = luminance(one), luminance(other)
    return (max(a, b) + 0.05) / (min(a, b) + 0.05)


class Beginning(WindowTest):
    """What meets whoever opens the window without a setup."""

    def test_every_door_of_the_start_opens_by_a_click_and_by_a_key(self):
        start = self.open()
        self.assertTrue(start.frame().says("Show me around"))
        self.assertTrue(start.click_word("Body").says("The load pulls hardest at"))
        start.press("F2")
        self.assertFalse(start.press("1").says("Show me around"))
        for key in ("F2", "F3", "F4"):
            start.press(key)
        self.assertTrue(start.press("F2").says("Go on: "))

    def test_the_look_around_goes_through_the_places_and_can_be_left(self):
        start = self.open()
        frame = start.click_word("Show me around")
        places = set()
        for _ in range(30):
            self.assertTrue(frame.says(" of "), frame.texts)
            places |= {text for text in frame.texts if text in ("Mechanical advantage", "Exercises")}
            if frame.says("Begin"):
                break
            frame = start.press("Return")
        self.assertEqual(places, {"Mechanical advantage", "Exercises"})
        start.press("Left")
        self.assertFalse(start.press("Escape").says("Leave"))

    def test_a_window_closed_in_order_begins_at_the_start_and_a_killed_one_goes_on(self):
        bench = self.open_seesaw()
        bench.saved()
        bench.kill()
        again = self.open()
        self.assertTrue(again.frame().says("Seesaw"))
        self.assertFalse(again.frame().says("Show me around"))
        again.ask_to_close()
        self.assertTrue(self.open().frame().says("Go on: Seesaw"))


class Opening(WindowTest):
    """Files that are named at the start or dropped on the window."""

    LESSON = "moment-arms.lesson.toml"

    def lesson(self, old="", new=""):
        """A shipped lesson in another folder, one piece of its text replaced."""
        text = (self.setups.parent / "lessons" / self.LESSON).read_text(encoding="utf-8")
        self.assertIn(old, text)
        path = Path(self.folder.name) / "mine.lesson.toml"
        path.write_text(text.replace(old, new), encoding="utf-8")
        return path

    def test_a_dropped_setup_comes_to_its_stage(self):
        window = self.open()
        self.assertTrue(window.drop(self.setups / "wheelbarrow.setup.toml").says("Second class"))
        body = window.drop(self.setups / "body" / "hinge-bar-near.setup.toml")
        self.assertTrue(body.says("The load pulls hardest at"))

    def test_a_lesson_comes_to_the_workshop_from_the_start_and_by_dropping(self):
        path = self.lesson('name = "How long is the moment arm?"', 'name = "Arms on the slipway"')
        window = self.open(path)
        self.assertTrue(window.frame().says("Arms on the slipway"))
        self.assertTrue(window.frame().says("mine.lesson.toml"))  # not one of those shipped
        self.assertTrue(window.press("Return").says("How hard does that child push down?"))
        self.lesson('name = "How long is the moment arm?"', 'name = "Arms at the dock"')
        frame = window.drop(path)  # changed since: it takes the place of the old one
        self.assertTrue(frame.says("Arms at the dock"))
        self.assertFalse(frame.says("Arms on the slipway"))
        window.press("F2")
        self.assertTrue(window.press("w").says("Arms at the dock"))

    def test_a_broken_file_is_named_with_what_is_wrong_wherever_it_is_dropped(self):
        broken = self.lesson('kind = "lesson"', 'kind = "lessen"')
        window = self.open()
        for key in ("F2", "F3", "F6", "F8"):
            before = window.press(key)
            frame = window.drop(broken)
            said = " ".join(frame.texts)
            self.assertIn("mine.lesson.toml", said)
            self.assertIn("lessen", said)
            self.assertEqual(window.press("Escape").texts, before.texts)
        run = subprocess.run([self.program, str(broken)], env={**os.environ,
                             "DISPLAY": self.display.name, "XDG_STATE_HOME": self.folder.name},
                             capture_output=True, text=True, timeout=LONGEST_WAIT_S)
        self.assertEqual(run.returncode, 2)
        self.assertIn("mine.lesson.toml", run.stderr)


class Letters(WindowTest):
    """Everything that can be pressed by the mouse can be pressed by its letters."""

    def test_letters_press_words_of_the_row_and_of_the_column(self):
        bench = self.open_seesaw()
        plain = bench.frame()
        frame = bench.press("F9")
        asked = bench.act("type", frame.letters_at("Ask me one like this"))
        self.assertTrue(asked.says("Back to the bench"))
        frame = bench.press("Escape", "F9")
        settings = bench.act("type", frame.letters_at("Settings"))
        self.assertTrue(settings.says("high contrast"))
        frame = bench.press("F9")
        bench.act("type", frame.letters_at("high contrast"))
        self.assertEqual(self.display.screenshot().at(5, 5), HIGH_CONTRAST["sheet"])
        bench.press("Escape")
        bench.press("F9")
        self.assertEqual(bench.press("Escape").texts, plain.texts)  # put away, nothing pressed


class Keeping(WindowTest):
    """What is kept, how fast it is, how it begins."""

    def test_a_killed_window_comes_back_with_its_lever_and_its_looks(self):
        bench = self.open_seesaw()
        bench.click_word("Settings")
        bench.click_word("US (lbf, ft, lb)")
        bench.click_word("dark")
        bench.press("Escape")
        frame = bench.drag("heavier child place", 77)
        bench.saved()
        bench.kill()
        again = self.open()
        self.assertEqual(again.frame().readings(), frame.readings())
        self.assertTrue(frame.readings()["Effort"].endswith("lbf"))
        self.assertEqual(self.display.screenshot().at(5, 5), DARK["sheet"])

    # --- speed ----------------------------------------------------------------------------------

    def test_the_frame_after_an_event_already_shows_its_result(self):
        bench = self.open_seesaw()
        for act in (("key", "Left"), ("key", "ctrl+z"), ("key", "u")):
            before = bench.frame_count()
            bench.act(*act)
            frames = bench.frames()[before:]
            # Keys with a modifier are several events: the first frame that differs is the last word.
            changed = [f for f in frames if f.readings() != bench.frame(before - 1).readings()]
            self.assertTrue(changed, act)
            for frame in changed:
                self.assertEqual(frame.readings(), frames[-1].readings(), act)
            if len(act[1]) == 1 or act[1] == "Left":
                self.assertEqual(frames[0].readings(), frames[-1].readings(), act)
        bench.drag("heavier child place", 40, release=False)
        x, y = bench.frame().grip("heavier child place")
        before = bench.frame_count()
        old = bench.frame().readings()
        bench.act("mousemove", round(x + 60), round(y))
        frames = bench.frames()[before:]
        self.assertNotEqual(frames[0].readings(), old)
        self.assertEqual(frames[0].readings(), frames[-1].readings())
        bench.act("mouseup", 1)

    def test_an_idle_window_draws_nothing_and_costs_nothing(self):
        bench = self.open_seesaw()
        bench.saved()
        frames, ticks = bench.frame_count(), self.cpu_ticks(bench)
        time.sleep(2.0)
        self.assertEqual(bench.frame_count(), frames)
        share = (self.cpu_ticks(bench) - ticks) / os.sysconf("SC_CLK_TCK") / 2.0
        self.assertLess(share, 0.01)

    @staticmethod
    def cpu_ticks(bench):
        """User and system time of all threads. Source: proc(5), /proc/pid/stat, fields 14 and 15."""
        stat = Path(f"/proc/{bench.process.pid}/stat").read_text(encoding="utf-8")
        fields = stat.rsplit(")", 1)[1].split()
        return int(fields[11]) + int(fields[12])


class Looks(WindowTest):
    """What the eye meets, and what is said where there is nothing to see."""

    def check_colours(self, frame, look):
        picture = self.display.screenshot()
        self.assertEqual(picture.at(5, 5), look["sheet"])
        colours = picture.colours()
        self.assertGreater(len(colours), 50)  # not blank: antialiased text and shapes
        for role in ("effort", "load"):  # arrows and the bars of the strip
            self.assertGreater(colours[look[role]], 1000, role)
        self.check_contrast(frame, picture)

    # Words that cannot be pressed now are pale on purpose.
    # Source: WCAG 2.2, success criterion 1.4.3: inactive components need no contrast.
    INACTIVE = {"Undo", "Redo", "Back"}

    def check_contrast(self, frame, picture):
        """Every text that is wholly on the screen stands out from what lies under it."""
        read = 0
        for entry in frame.data["texts"]:
            above, below = entry["y"] - 0.75 * entry["em"], entry["y"] + 0.2 * entry["em"]
            if entry["text"] in self.INACTIVE or not entry["text"].strip() or above < 0 or \
                    below > picture.height or entry["x"] + entry["width"] > picture.width:
                continue
            box = picture.colours(entry["x"], above, entry["x"] + entry["width"], below)
            ground = box.most_common(1)[0][0]
            best = max(contrast(ground, colour) for colour in box)
            # Source: WCAG 2.2, success criterion 1.4.3: 4.5:1 for text.
            self.assertGreaterEqual(best, 4.5, f"'{entry['text']}' on {ground}")
            read += 1
        self.assertGreater(read, 5)

    def test_every_place_can_be_read_in_every_look(self):
        """The pictures stay beside the build, for whoever wants to look."""
        window = self.open_seesaw()
        pictures = Path("screenshots")
        pictures.mkdir(exist_ok=True)
        for look in ("light", "dark", "high-contrast"):
            for key in range(2, 9):
                frame = window.press(f"F{key}")
                picture = self.display.screenshot()
                picture.save(pictures / f"{look}-{key - 1}.png")
                with self.subTest(look=look, place=key - 1):
                    self.check_contrast(frame, picture)
            window.press("F2")
            window.press("d")

    def test_the_sheet_has_its_colours_and_its_text_can_be_read_in_every_look(self):
        bench = self.open_seesaw()
        self.check_colours(bench.frame(), LIGHT)
        self.check_colours(bench.press("d"), DARK)
        self.check_colours(bench.press("d"), HIGH_CONTRAST)

    # --- bad beginnings -------------------------------------------------------------------------

    def run_and_fail(self, *arguments, display):
        environment = {**os.environ, "XDG_STATE_HOME": self.folder.name}
        environment.pop("DISPLAY", None)
        environment.pop("WAYLAND_DISPLAY", None)
        if display:
            environment["DISPLAY"] = display
        return subprocess.run([self.program, *map(str, arguments)], env=environment,
                              capture_output=True, text=True, timeout=LONGEST_WAIT_S)

    def test_a_broken_setup_is_named_with_the_line_and_ends_with_2(self):
        broken = Path(self.folder.name) / "broken.setup.toml"
        text = (self.setups / "seesaw.setup.toml").read_text(encoding="utf-8")
        for content in ("", "kind = ", text.replace("axis", "aksis"), "\0\1\2"):
            broken.write_text(content, encoding="utf-8")
            run = self.run_and_fail(broken, display=self.display.name)
            self.assertEqual(run.returncode, 2, run.stderr)
            self.assertIn("broken.setup.toml", run.stderr)
        run = self.run_and_fail(Path(self.folder.name) / "nowhere.toml", display=self.display.name)
        self.assertEqual(run.returncode, 2, run.stderr)
        self.assertIn("nowhere.toml", run.stderr)

    def test_without_a_display_the_program_says_so_and_ends_with_1(self):
        for display in (None, ":987"):
            run = self.run_and_fail(self.setups / "seesaw.setup.toml", display=display)
            self.assertEqual(run.returncode, 1, run.stderr)
            self.assertIn("display", run.stderr)
            self.assertIn("steelyard solve", run.stderr)  # what works all the same
