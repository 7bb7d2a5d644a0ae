"""Lessons in the real window."""

import json
import re
import subprocess
import time
from pathlib import Path

from shown_quantity import agrees
from window_case import WindowTest
from window_driver import Display


class Workshop(WindowTest):
    """Lessons before a room."""

    SMALLEST_PX = 43.0  # on 1080 lines: what our own look asks for, so that the back row can read

    @classmethod
    def setUpClass(cls):
        cls.display = Display(1920, 1080)

    def open_shelf(self):
        bench = self.open(self.setups / "seesaw.setup.toml", size="1920x1080")
        bench.press("w")
        return bench

    def start_second_lesson(self):
        """How long is the moment arm?"""
        bench = self.open_shelf()
        bench.press("Down")
        bench.press("Return")
        return bench

    def leave(self, bench):
        """One Escape too many ends no lesson: it asks first."""
        self.assertTrue(bench.press("Escape").says("Leave the lesson"))
        self.assertTrue(bench.press("Escape").says("How long is the moment arm?"))

    def effort_of(self, setup, old="", new=""):
        """The solver's effort for a shipped setup, one piece of its text replaced."""
        text = (self.setups / f"{setup}.setup.toml").read_text(encoding="utf-8")
        self.assertIn(old, text)
        changed = Path(self.folder.name) / "changed.setup.toml"
        changed.write_text(text.replace(old, new), encoding="utf-8")
        out = subprocess.run([self.program, "solve", "--json", str(changed)], check=True,
                             capture_output=True).stdout
        return json.loads(out)["effort_N"]

    def check_type(self, frame):
        for entry in frame.data["texts"]:
            self.assertGreaterEqual(entry["em"], self.SMALLEST_PX, entry["text"])

    def shown_key(self, frame):
        """The number that stands large, with its unit beside it."""
        number = max(frame.data["texts"], key=lambda entry: entry["em"])
        self.assertGreaterEqual(number["em"], 119.9)
        unit = next(entry["text"] for entry in frame.data["texts"]
                    if entry["y"] == number["y"] and entry["x"] > number["x"])
        return f"{number['text']} {unit}"

    def test_a_lesson_runs_from_start_to_end_with_the_solvers_numbers(self):
        bench = self.start_second_lesson()
        efforts = [self.effort_of("seesaw"),
                   self.effort_of("seesaw", 'at = "40 cm"', 'at = "95 cm"'),
                   self.effort_of("wheelbarrow"),
                   self.effort_of("wheelbarrow", 'at = "45 cm"', 'at = "90 cm"')]
        for step, effort in enumerate(efforts):
            before = bench.frame()
            self.check_type(before)
            # Predict first: the number is nowhere on the screen.
            self.assertFalse(any(text.strip() and re.fullmatch(r"[\d.\u2009]+\s?N", text)
                                 and agrees(text, effort) for text in before.texts))
            if step % 2 == 0:
                bench.act("type", "250")
                bench.press("Return")
            else:
                bench.act("type", "12")
                bench.press("Return")
                bench.act("type", "7")
                self.assertTrue({"12", "7"} <= set(bench.frame().texts))
            revealed = bench.press("Next")
            self.check_type(revealed)
            shown = self.shown_key(revealed)
            self.assertTrue(agrees(shown, effort), f"step {step + 1}: {shown} is {effort}")
            bench.press("Next")
        bench.press("Next", "Next")  # the crowbar: revealed, then on
        self.assertTrue(bench.frame().says("Which two ways are there"))
        self.check_type(bench.press("Next"))
        self.assertTrue(bench.frame().says("Halve the force"))
        bench.press("Next")  # there is nothing behind the last step
        self.assertTrue(bench.frame().says("Halve the force"))
        bench.press("Prior")
        self.assertTrue(bench.frame().says("ideal advantage"))
        self.leave(bench)

    def test_the_presenters_window_has_the_note_and_can_be_closed(self):
        bench = self.start_second_lesson()
        bench.press("ctrl+n")  # a number may be coming: a bare letter is none of the window's
        bench.wait(lambda: bench.presenter().says("Take five numbers"), "the note")
        self.assertFalse(bench.frame().says("Take five numbers"))
        bench.xdotool("windowfocus", bench.window)
        bench.act("type", "320")
        bench.press("Return")
        self.assertTrue(bench.presenter().says("320"))
        bench.press("ctrl+f")
        bench.press("Next")
        self.assertTrue(bench.presenter().says("The room still sees step 1"))
        self.assertFalse(bench.frame().says("230"))
        bench.press("ctrl+f")
        self.assertTrue(bench.frame().says("230"))
        drawn = (bench.frame_count(), len(bench.told_to_presenter))
        time.sleep(1.0)  # idle draws nothing in either; the timer goes on in quarters of a minute
        self.assertEqual(bench.frame_count(), drawn[0])
        self.assertLessEqual(len(bench.told_to_presenter), drawn[1] + 1)
        window = bench.xdotool("search", "--name", "Steelyard: notes").split()[-1]
        place = dict(line.split("=") for line in
                     bench.xdotool("getwindowgeometry", "--shell", window).split())
        for at, size, most in (("X", "WIDTH", 1920), ("Y", "HEIGHT", 1080)):
            self.assertGreaterEqual(int(place[at]), 0)
            self.assertLessEqual(int(place[at]) + int(place[size]), most)
        self.display.messages.close_window(int(window))
        bench.wait(lambda: not self.windows_named("Steelyard: notes", bench), "its end")
        bench.xdotool("windowfocus", bench.window)
        self.assertTrue(bench.press("Next").says("slides halfway in"))
        self.assertEqual(bench.press("ctrl+b").texts, [])  # blank
        self.assertTrue(bench.press("b").says("slides halfway in"))

    def windows_named(self, name, bench):
        try:
            return bench.xdotool("search", "--name", name).split()
        except subprocess.CalledProcessError:
            return []

    def test_a_lesson_is_led_by_the_mouse_alone(self):
        bench = self.open_shelf()
        bench.click_word("How long is the moment arm?")
        self.assertIn("How hard does that child push down?", self.told(bench.click_word("Begin")))
        self.assertTrue(agrees(self.shown_key(bench.click_word("Next")), self.effort_of("seesaw")))
        frame = bench.click_word("Next")
        self.assertTrue(frame.says("slides halfway in"))
        answer = self.answers(frame)[1]
        bench.act("mousemove", *frame.place_of(answer))
        for button in (1, 1, 1, 3):  # three hands up, one down again
            bench.act("click", button)
        self.assertIn("2", bench.aside().texts)
        self.assertTrue(agrees(self.shown_key(bench.click_word("Back")), self.effort_of("seesaw")))
        bench.click_word("Next")
        while not bench.frame().says("Halve the force"):
            bench.click_word("Next")
        self.assertNotIn("Next", bench.frame().texts)  # there is nothing behind the last step
        bench.click_word("Leave")
        self.assertTrue(bench.click_word("Stay").says("Halve the force"))
        x, y = bench.frame().place_of("Leave")
        bench.click(x, y)
        self.assertTrue(bench.click(x, y).says("Halve the force"))  # pressed twice it only asks
        self.assertTrue(bench.click_word("Leave the lesson (Escape)").says("Notes window"))

    @staticmethod
    def told(frame):
        """A sentence may go over several lines."""
        return " ".join(frame.texts)

    @staticmethod
    def answers(frame):
        """The answers to choose from, by the numbers before them."""
        texts = frame.data["texts"]
        return [after["text"] for number, after in zip(texts, texts[1:])
                if number["text"] in "12345" and number["y"] == after["y"]
                and number["x"] < after["x"]]

    def test_a_nervous_hand_ends_hides_and_moves_nothing(self):
        bench = self.start_second_lesson()
        bench.xdotool("key", "Return")  # the lesson was started twice
        self.assertIn("How hard does that child push down?", self.told(bench.press("ctrl+n")))
        bench.wait(lambda: bench.presenter().says("Take five numbers"), "the notes")
        bench.xdotool("windowfocus", bench.window)
        bench.act("type", "--delay", 20, "25 ft lbf bn.")
        self.assertTrue(bench.presenter().says("25 ft lbf bn."))
        bench.press("Escape")
        bench.press("Next")  # the reveal; somebody calls a number all the same
        bench.act("type", "--delay", 20, "25 ft lbf")
        self.assertIn("25 ft lbf …", bench.frame().texts)
        bench.press("Return", "Return", "Escape")
        bench.act("type", "--delay", 20, "60 lbf")
        bench.press("Return", "Return", "Return")
        frame = bench.frame()
        self.assertTrue(agrees(self.shown_key(frame), self.effort_of("seesaw")), frame.texts)
        self.assertTrue(bench.presenter().says("267"), bench.presenter().texts)  # 60 lbf in N
        self.assertTrue(bench.presenter().says("step 1 of"))
        frame = bench.press("Next")  # hands
        bench.act("type", "--delay", 20, "bn")
        bench.act("type", "--delay", 20, "12 b f")
        bench.press("Return", "Return", "Return")
        self.assertTrue(bench.frame().says("slides halfway in"))
        self.assertTrue(self.windows_named("Steelyard: notes", bench))
        self.assertIn("12", bench.frame().texts)
        self.assertFalse(bench.presenter().says("Revealed"))
        self.assertFalse(bench.presenter().says("The room sees nothing"))
        self.assertFalse(bench.presenter().says("The room still sees"))
        bench.press("Escape")
        bench.press("Next")  # that one was nervous, too
        self.assertTrue(bench.presenter().says("Revealed"))

    def test_f11_fills_the_screen_and_goes_back(self):
        bench = self.open(self.setups / "seesaw.setup.toml", size="1280x720")
        bench.press("w")

        def size():
            lines = bench.xdotool("getwindowgeometry", "--shell", bench.window).split()
            place = dict(line.split("=") for line in lines)
            return int(place["WIDTH"]), int(place["HEIGHT"])
        bench.press("F11")
        bench.wait(lambda: size() == (1920, 1080), "the full screen")
        bench.xdotool("windowfocus", bench.window)
        bench.press("Return")  # a lesson, which has nearly all keys
        bench.press("F11")
        bench.wait(lambda: size() == (1280, 720), "the window as it was")
        bench.xdotool("windowfocus", bench.window)
        bench.press("F11")
        bench.wait(lambda: size() == (1920, 1080), "the full screen")
        bench.ask_to_close()
        kept_file = Path(self.folder.name) / "steelyard" / "preferences.json"
        kept = json.loads(kept_file.read_text(encoding="utf-8"))
        self.assertEqual((kept["width"], kept["height"]), (1280, 720), kept)

    def test_a_lesson_is_made_and_shown_by_keys_alone(self):
        bench = self.open_shelf()
        bench.press("a")
        frame = bench.press("l", "F9")
        bench.act("type", frame.letters_at("a number"))
        frame = bench.press("F9")
        bench.act("type", frame.letters_at("Sentence to the room"))
        bench.act("type", "--delay", 10, "How hard?")
        bench.act("keydown", "Escape")  # leaves the field, not the text
        self.assertTrue(bench.act("keyup", "Escape").says("How hard?"))
        self.assertTrue(bench.press("Return").says("How hard?"))
        self.assertTrue(agrees(self.shown_key(bench.press("Next")), self.effort_of("seesaw")))

    def test_a_lesson_is_made_from_the_bench_and_kept(self):
        bench = self.open_shelf()
        bench.press("a")
        bench.press("l")
        self.assertTrue(bench.frame().says("1  Seesaw"))
        bench.press("l")
        bench.press("Delete")
        bench.press("ctrl+z")
        self.assertTrue(bench.frame().says("2  Seesaw"))
        bench.press("ctrl+z")
        self.assertFalse(bench.frame().says("2  Seesaw"))
        bench.click_word("a number")
        entry = bench.frame().entry("What do you expect?")
        bench.act("mousemove", round(entry["x"] + 40), round(entry["y"]))
        bench.act("click", 1)
        bench.act("type", "--delay", 10, "Who pushes harder?")
        bench.click(760, 900)
        shown = bench.press("Return")
        self.assertTrue(shown.says("Who pushes harder?"))
        revealed = bench.press("Next")
        self.assertTrue(agrees(self.shown_key(revealed), self.effort_of("seesaw")))
        bench.press("Escape", "Escape")
        self.assertTrue(bench.press("Escape").says("1 step, yours"))
        kept = Path(self.folder.name) / "steelyard" / "lessons" / "my-lesson.lesson.toml"
        self.assertIn("Who pushes harder?", kept.read_text(encoding="utf-8"))  # among what was there
