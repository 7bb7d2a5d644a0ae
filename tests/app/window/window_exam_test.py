"""The mock exam in the real window: its beam, its clock, its report."""

import json
import re
import shutil
import time
from pathlib import Path

from window_practice_test import Candidate


class Exam(Candidate):
    """One exam sat by mouse, by keys, and across a kill."""

    def begin(self, **options):
        window = self.open_practice(**options)
        window.press("e")
        self.assertTrue(window.press("Return").says("1 of 40"))
        return window

    def at(self, frame, number, of=40):
        self.assertIn(f"{number} of {of}", frame.texts)
        notch, pointer = frame.grip(f"notch {number}"), frame.grip("pointer")
        self.assertAlmostEqual(pointer[0], notch[0], delta=0.6)
        return frame

    @staticmethod
    def weights(frame):
        return {int(grip["text"].split()[1]) for grip in frame.data["grips"]
                if re.fullmatch(r"weight \d+", grip["text"])}

    @staticmethod
    def answered(frame):
        return {int(grip["text"].split()[1].rstrip(":")) for grip in frame.data["grips"]
                if re.fullmatch(r"notch \d+: answered(, to come back to)?", grip["text"])}

    def kept_items(self):
        lines = self.terminal("record", "export").splitlines()
        return next(row["exam"] for row in map(json.loads, lines) if "exam" in row)["items"]

    def typed_question(self, window):
        """Goes on to a question that is answered in a line."""
        while not window.frame().says("Type a number"):
            window.press("Next")
        return window.frame()

    # --- the beam ---------------------------------------------------------------------------------

    def test_the_beam_is_led_by_the_mouse(self):
        window = self.begin()
        x, y = window.frame().grip("notch 23")
        pitch = window.frame().grip("notch 24")[0] - x
        frame = self.at(window.click(round(x + 0.3 * pitch), round(y + 12)), 23)  # near is enough
        x, y = (round(one) for one in frame.grip("pointer"))
        window.act("mousemove", x, y)
        window.xdotool("mousedown", 1)
        for number in (18, 9, 6):
            to = round(frame.grip(f"notch {number}")[0])
            over = window.act("mousemove", to, y + 5)
            self.at(over, number)
            self.assertTrue(any(re.match(rf"{number}: ", text) for text in over.texts))
        self.at(window.act("mouseup", 1), 6)
        self.at(window.aside(), 6)

    def test_weights_hang_where_one_clicks_and_come_off_again(self):
        window = self.begin()
        for number in (12, 31, 1):
            x, y = window.frame().grip(f"notch {number}")
            window.click(round(x), round(y + 30))
        frame = self.at(window.frame(), 1)
        self.assertEqual(self.weights(frame), {1, 12, 31})
        self.at(window.click_word("3 to come back to"), 12)
        self.at(window.click_word("3 to come back to"), 31)
        self.at(window.press("shift+Prior"), 12)
        x, y = window.frame().grip("weight 31")
        frame = window.click(round(x), round(y))
        self.assertEqual(self.weights(frame), {1, 12})
        frame = window.click_word(next(text for text in frame.texts
                                       if text.startswith("Come back (")))
        self.assertEqual(self.weights(frame), {1})
        self.assertEqual([n for n, item in enumerate(self.kept_items(), 1) if item["come_back"]],
                         [1])

    def test_in_the_answer_line_every_letter_is_a_letter_and_the_caret_stays(self):
        window = self.begin()
        self.typed_question(window)
        here = int(next(t for t in window.frame().texts if t.endswith(" of 40")).split()[0])
        window.act("type", "1")
        frame = window.press("ctrl+m")
        self.assertEqual(self.weights(frame), {here})
        window.act("type", "2")
        x, y = frame.grip("notch 40")
        frame = window.click(round(x), round(y + 30))
        self.assertEqual(self.weights(frame), {here, 40})
        window.act("type", "0 N m")
        self.assertEqual(self.weights(window.frame()), {here, 40})
        frame = self.at(window.press("Next"), here + 1)
        self.assertIn(here, self.answered(frame))
        self.assertEqual(self.kept_items()[here - 1]["answer"], "120 N m")
        self.typed_question(window)
        here = int(next(t for t in window.frame().texts if t.endswith(" of 40")).split()[0])
        for letter in ("f", "n", "p", "e", "m"):  # none of them leads anywhere
            window.press("ctrl+a")
            window.act("type", letter)
            frame = window.press("Return")
            self.assertFalse(frame.says("End the exam?"))
        self.at(frame, here)

    def test_outside_an_answer_line_the_key_m_hangs_the_weight(self):
        window = self.begin()
        while window.frame().says("Type a number"):
            window.press("Next")
        self.assertEqual(len(self.weights(window.press("m"))), 1)
        self.assertFalse(self.weights(window.press("m")))

    def test_letters_lead_to_the_numbered_notches(self):
        window = self.begin()
        for number in (25, 5):
            frame = window.press("F9")
            x, y = frame.grip(f"notch {number}")
            letters = min((text for text in frame.data["texts"]
                           if re.fullmatch(r"[A-Z]{1,2}", text["text"])),
                          key=lambda text: abs(text["x"] - x) + abs(text["y"] - y))
            self.at(window.act("type", letters["text"].lower()), number)

    # --- a long exam, large text ------------------------------------------------------------------

    def long_exam(self, questions):
        """A program whose course asks so many questions, installed beside its data."""
        top = Path(self.folder.name) / "installed"
        (top / "bin").mkdir(parents=True)
        shutil.copy(self.program, top / "bin" / "steelyard")
        source, share = self.setups.parent.parent, top / "share" / "steelyard"
        share.mkdir(parents=True)
        (share / "question_bank").symlink_to(source / "question_bank")
        shutil.copytree(source / "assets", share / "assets")
        exam = share / "assets" / "learner" / "mock-exam.exam.toml"
        exam.write_text(exam.read_text(encoding="utf-8").replace(
            "questions = 40", f"questions = {questions}"), encoding="utf-8")
        return str(top / "bin" / "steelyard")

    def check_numbers_apart(self, frame):
        numbers = sorted((text["x"], text["x"] + text["width"]) for text in frame.data["texts"]
                         if re.fullmatch(r"\d+", text["text"]) and text["y"] < 140)
        self.assertGreater(len(numbers), 4)
        for one, other in zip(numbers, numbers[1:]):
            self.assertLess(one[1] + 4, other[0])

    def test_a_hundred_questions_are_reached_and_told_apart_with_large_text(self):
        self.program = self.long_exam(100)
        window = self.open_practice()
        window.press("e")
        self.assertTrue(window.press("Return").says("1 of 100"))
        pictures = Path("screenshots")
        pictures.mkdir(exist_ok=True)
        for size in (100, 110, 125, 150):  # steps of the text size [%]
            frame = window.frame()
            self.check_numbers_apart(frame)
            for number in (2, 47, 99, 100):
                x, y = frame.grip(f"notch {number}")
                self.at(window.click(round(x), round(y)), number, 100)
                below = round(y + 0.34 * size)
                self.assertIn(number, self.weights(window.click(round(x), below)))
            self.assertEqual(self.weights(window.frame()), {2, 47, 99, 100})
            self.display.screenshot().save(pictures / f"exam-100-at-{size}.png")
            for number in (2, 47, 99, 100):
                window.click(*(round(one) for one in window.frame().grip(f"weight {number}")))
            self.assertFalse(self.weights(window.frame()))
            window.press("ctrl+equal")

    # --- the clock and the end --------------------------------------------------------------------

    def test_an_exam_goes_on_after_a_kill_with_its_answers_and_its_clock(self):
        begun_s = time.monotonic()
        window = self.begin()
        began_s = time.monotonic()
        for number in range(1, 4):
            frame = self.at(window.frame(), number)
            if frame.says("Type a number"):
                window.act("type", "12")
            elif self.choices(frame):
                window.press(*(str(n) for n in range(1, self.choices(frame) + 1)))
            else:
                window.press("b")
            frame = window.press("Return")
            self.assertFalse(frame.says("Answer: "))
        self.assertEqual(self.answered(frame), {1, 2, 3})
        self.assertTrue(frame.says("60 min left"))
        frames = window.frame_count()
        time.sleep(6.0)  # the clock is what is tested: it is kept every five seconds
        drawn = window.frame_count() - frames
        self.assertGreaterEqual(drawn, 1)
        self.assertLessEqual(drawn, 3)
        shortest_s = time.monotonic() - began_s
        window.kill()
        longest_s = time.monotonic() - begun_s
        again = self.open()
        frame = again.press(self.PRACTICE_KEY)
        frame = again.press("e")
        told = " ".join(frame.texts)  # over two lines
        self.assertIn("3 of 40 answered", told)
        minutes, seconds = re.search(r"(\d+):(\d\d) left", told).groups()
        used_s = 3600 - 60 * int(minutes) - int(seconds)
        # Kept every five seconds while nothing else is kept; time without the program is none.
        self.assertTrue(shortest_s - 6.5 <= used_s <= longest_s + 1,
                        (shortest_s, used_s, longest_s))
        frame = self.at(again.press("Return"), 4)
        self.assertEqual(self.answered(frame), {1, 2, 3})
        self.end_exam(again)

    def end_exam(self, window):
        self.typed_question(window)
        window.act("type", "1")
        window.press("ctrl+e")  # also from the answer line
        self.assertIn("36 without an answer. End the exam?", " ".join(window.frame().texts))
        frame = window.press("y")
        exam = self.progress()["exams"][0]
        self.assertIn(f"{exam['right']} of {exam['of']}", frame.texts)
        self.assertTrue(frame.says("Not passed"))
        self.check_report(window, frame, exam["right"])

    def check_report(self, window, frame, right):
        """The beam of the report tells right from wrong by shape and word."""
        self.assertEqual({f"{right} right", f"{4 - right} wrong", "36 without an answer"} -
                         set(frame.texts), set())
        signs = [grip["text"].split(": ")[1] for grip in frame.data["grips"]
                 if re.match(r"notch \d+: ", grip["text"])]
        self.assertEqual((signs.count("right"), signs.count("wrong"), signs.count("no answer")),
                         (right, 4 - right, 36))
        self.assertTrue(window.press("n").says("Answer: "))
        x, y = window.frame().grip("notch 40")
        frame = window.click(round(x), round(y))
        self.assertTrue(frame.says("Question 40 of 40: you gave no answer"))
        self.assertAlmostEqual(frame.grip("pointer")[0], x, delta=0.6)
