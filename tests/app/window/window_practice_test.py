"""Practice in the real window."""

import datetime
import json
import os
import subprocess
from pathlib import Path

from window_case import WindowTest


class Candidate(WindowTest):
    """Somebody who answers questions in the window and looks at the record in the terminal."""

    PRACTICE_KEY = "F6"  # its turn in the row of places, F2 being the first

    def open_practice(self, name="Ada", *arguments):
        window = self.open(*arguments)
        window.press(self.PRACTICE_KEY)
        window.act("type", "--delay", 20, name)
        self.assertTrue(window.press("Return").says("Quick quiz"))
        return window

    def terminal(self, *arguments):
        environment = {**os.environ, "XDG_DATA_HOME": self.folder.name}
        return subprocess.run([self.program, *map(str, arguments)], check=True, capture_output=True,
                              env=environment).stdout.decode()

    def mark(self, code, answer):
        return json.loads(self.terminal("mark", code, answer, "--json"))

    def progress(self):
        return json.loads(self.terminal("progress", "--json"))

    def answers(self):
        """Everything that was kept, oldest first."""
        lines = self.terminal("record", "export").splitlines()
        return [row["answer"] for row in map(json.loads, lines) if "answer" in row]

    @staticmethod
    def code(frame):
        return next(t for t in frame.texts if t.startswith("code ")).removeprefix("code ")

    @staticmethod
    def choices(frame):
        return sum(entry["x"] > 940.0 and entry["text"] in tuple("ABCDEFG")
                   for entry in frame.data["texts"])

    def answer_by_keys(self, window, frame):
        """Answers what is on the screen: right, where trying every choice finds it."""
        if frame.says("Choose one."):
            code = self.code(frame)
            right = next(str(n) for n in range(1, self.choices(frame) + 1)
                         if self.mark(code, str(n))["correct"])
            window.press(right)
        elif frame.says("Choose every one"):
            window.press("1")
        elif frame.says("Choose them in order"):
            window.press(*(str(n) for n in range(1, self.choices(frame) + 1)))
        elif frame.says("Type a number"):
            window.act("type", "--delay", 20, self.mark(self.code(frame), "1")["answer"])
        else:
            window.press("b")
        return window.press("Return")


class Practice(Candidate):
    """Questions answered by a candidate, and what the record says of it afterwards."""

    def test_function_keys_lead_away_from_a_text_field(self):
        window = self.open(self.setups / "wheelbarrow.setup.toml")
        self.assertTrue(window.press("F6").says("Your name"))
        window.act("type", "--delay", 30, "Ad")
        self.assertTrue(window.press("F3").says("Second class"))
        self.assertFalse(window.press("F6").says("Second class"))

    def test_a_quick_quiz_by_keys_alone_is_marked_kept_and_counted_like_in_the_terminal(self):
        window = self.open_practice()
        frame = window.press("q")
        shown = []
        for number in range(1, 6):
            self.assertTrue(frame.says(f"{number} of 5. "), frame.texts)
            frame = self.answer_by_keys(window, frame)
            shown.append("right" if frame.says("Right") else "wrong")
            self.assertTrue(frame.says("Answer: "), frame.texts)
            frame = window.press("Return")
        right = shown.count("right")
        self.assertTrue(frame.says(f"{right} of 5 right at the first try"), frame.texts)
        kept = self.answers()
        self.assertEqual([answer["outcome"] for answer in kept], shown)
        for answer in kept:
            self.assertEqual(answer["purpose"], "quick")
            self.assertEqual(self.mark(answer["code"], answer["typed"])["correct"],
                             answer["outcome"] == "right", answer)
        self.check_progress(window)

    def check_progress(self, window):
        """The staircase and the readiness are those of the terminal."""
        window.press("Return")
        frame = window.press("p")
        truth = self.progress()
        self.assertTrue(frame.says(f"Ada, {truth['answers']} answers so far"))
        ready = truth["readiness"]
        self.assertTrue(ready["too_early"])  # five answers say nothing about an exam
        self.assertTrue(frame.says("Too early to predict a score"), frame.texts)
        self.assertFalse(any(text.startswith("expected ") for text in frame.texts))
        for skill in truth["skills"]:
            self.assertTrue(frame.says(skill["title"][:12]), skill["title"])
        tried = [skill for skill in truth["skills"] if skill["answers"] > 0]
        for skill in tried:
            self.assertTrue(frame.says(f"{100.0 * skill['known']:.0f} %"), skill)

    def test_a_calendar_leads_to_the_exam_and_begins_the_day(self):
        window = self.open_practice()
        window.click_word("Calendar  (C)")
        frame = window.frame()
        self.assertTrue(frame.says("No day is set."), frame.texts)
        window.click_word("Set exam date (D)")
        day = datetime.date.today() + datetime.timedelta(days=9)
        window.act("type", "--delay", 20, day.strftime("%d %b %Y"))
        frame = window.press("Return")
        self.assertTrue(frame.says("today"), frame.texts)
        self.assertTrue(frame.says("Begin: "), frame.texts)
        self.assertEqual(self.progress()["exam_day"], day.isoformat())
        truth = self.terminal("calendar")
        self.assertIn("Your exam.", truth)
        for _ in range(9):
            frame = window.press("Right")
        self.assertTrue(frame.says("Your exam. Sleep"), frame.texts)
        for _ in range(2):
            frame = window.press("Left")
        self.assertTrue(frame.says("Sit a mock exam: 40 questions"), frame.texts)
        window.click_word("Begin today's session")
        self.assertTrue(window.frame().says("Placement: question 1"))

    def test_a_question_of_a_sheet_is_answered_by_its_code(self):
        window = self.open_practice()
        code = json.loads(self.terminal("generate", "--count", 1, "--seed", 5, "--json"))
        code = code["questions"][0]["code"]
        window.click_word("A question by its code  (K)")
        window.act("type", "--delay", 20, "AAAAA-AAAA")
        self.assertTrue(window.press("Return").says("code"))
        window.act("key", "ctrl+a")
        window.act("type", "--delay", 20, code.lower())
        frame = window.press("Return")
        self.assertEqual(self.code(frame), code)
        frame = self.answer_by_keys(window, frame)
        self.assertEqual(self.answers()[-1]["code"], code)

    def test_a_record_of_another_folder_that_is_deleted_is_written_again_and_said(self):
        data = Path(self.folder.name) / "elsewhere"
        window = self.open_practice("Ada", "--data", data)
        frame = self.answer_by_keys(window, window.press("q"))
        (data / "record.sqlite").unlink()
        self.assertNotIn("deleted or moved away", " ".join(frame.texts))
        self.answer_by_keys(window, window.press("Return"))
        window.press("Escape")
        self.assertIn("deleted or moved away", " ".join(window.frame().texts))
        progress = json.loads(self.terminal("--data", data, "progress", "--json"))
        self.assertEqual(progress["answers"], 2)
        self.assertEqual((data / "record.sqlite").stat().st_mode & 0o777, 0o600)
        self.assertEqual(data.stat().st_mode & 0o777, 0o700)
        self.assertFalse((Path(self.folder.name) / "steelyard" / "record.sqlite").exists())

    def test_a_place_is_answered_by_dragging_on_the_drawing(self):
        window = self.open_practice()
        frame = window.press("p")
        window.click_word("Practise the chosen step")
        frame = window.press("Escape")  # out of the pages that come first
        for _ in range(20):
            if frame.says("Drag the point along the lever."):
                break
            frame = window.press("Return" if frame.says("I have read it") else "n")
            if frame.says("Another one"):
                frame = window.press("a")
        code = self.code(frame)
        window.act("mousemove", 300, 330)
        window.xdotool("mousedown", 1)
        window.act("mousemove", 420, 340)
        window.act("mouseup", 1)
        self.assertAlmostEqual(window.frame().grip("placed")[0], 420, delta=12)
        frame = window.press("Return")
        answer = next(one for one in self.answers() if one["code"] == code)
        self.assertEqual(self.mark(code, answer["typed"])["correct"], frame.says("Right"))
        if not frame.says("Right"):  # a place may be drawn once more, after a hint
            self.assertTrue(frame.says("once more."), frame.texts)
            self.assertFalse(frame.says("the right place"))
            frame = window.press("Return")
        self.assertTrue(frame.says("the right place"))

    def test_a_new_skill_is_taught_by_pages_before_it_is_asked(self):
        window = self.open_practice()
        window.press("p")
        frame = window.click_word("Practise the chosen step")
        self.assertTrue(frame.says("Page 1 of "), frame.texts)
        pages = int(next(t for t in frame.texts if t.startswith("Page 1 of ")).split()[-1])
        dragged = 0
        for page in range(1, pages + 1):
            self.assertTrue(frame.says(f"Page {page} of {pages}"), frame.texts)
            if frame.says("Guess first"):
                self.assertFalse(frame.says("Drag it"))
                self.assertTrue(window.press("Return").says(f"Page {page} of"))
                frame = window.press("1")
            if frame.says("Drag it"):
                dragged += self.drag_changes_numbers(window, frame)
            frame = window.press("Return")
        self.assertGreater(dragged, 0)
        self.assertTrue(frame.says("I have read it"), frame.texts)
        frame = window.press("e")
        self.assertTrue(frame.says("Page 1 of"), frame.texts)
        self.assertTrue(frame.says("Leave these pages"))
        frame = window.press("Escape")
        self.assertTrue(frame.says("I have read it"), frame.texts)
        self.assertEqual(self.answers(), [])

    def drag_changes_numbers(self, window, frame):
        """Whether the rail, dragged to one end and the other, changes what is read."""
        name = next(t for t in frame.texts if t.startswith("Drag it: "))
        grip = next(e for e in frame.data["grips"] if name.startswith(f"Drag it: {e['text']}"))
        seen = []
        for x in (965, 1250):
            window.act("mousemove", int(grip["x"]), int(grip["y"]))
            window.xdotool("mousedown", 1)
            window.act("mousemove", x, int(grip["y"]))
            window.act("mouseup", 1)
            frame = window.frame()
            seen.append(frame.texts)
            grip = next(e for e in frame.data["grips"] if e["text"] == grip["text"])
        return seen[0] != seen[1]

    def test_the_glossary_finds_a_term_by_what_exams_call_it_and_gives_the_place_back(self):
        window = self.open_practice()
        frame = window.press("ctrl+g")
        self.assertTrue(frame.says("Lever"), frame.texts)
        window.act("type", "--delay", 20, "coronal")
        frame = window.frame()
        self.assertTrue(frame.says("Frontal plane"), frame.texts)
        self.assertTrue(frame.says("Source: "), frame.texts)
        self.assertTrue(window.click_word("Close the glossary").says("Quick quiz"))
        self.assertTrue(window.click_word("Glossary").says("Frontal plane"))
        self.assertTrue(window.press("Escape").says("Quick quiz"))

    def test_check_with_nothing_entered_says_so_and_marks_nothing(self):
        window = self.open_practice()
        window.press("q")
        for _ in range(5):
            frame = window.press("Return")
            self.assertTrue(frame.says("Nothing is entered yet"), frame.texts)
            self.assertFalse(frame.says("Answer: "))
            frame = self.answer_by_keys(window, frame)
            self.assertFalse(frame.says("Nothing is entered yet"), frame.texts)
            frame = window.press("Return")
        self.assertEqual(len(self.answers()), 5)


class ComingBack(Candidate):
    """What was begun, missed or marked is there again."""

    def test_a_session_goes_on_where_it_was_after_the_program_was_killed(self):
        window = self.open_practice()
        frame = self.answer_by_keys(window, window.press("q"))
        frame = window.press("Return")
        self.assertTrue(frame.says("2 of 5. "), frame.texts)
        code = self.code(frame)
        window.kill()
        window = self.open()
        frame = window.press(self.PRACTICE_KEY)
        self.assertTrue(frame.says("Go on where you were"), frame.texts)
        self.assertTrue(frame.says("A session was not ended. 2 of 5"), frame.texts)
        frame = window.press("t")
        self.assertTrue(frame.says("2 of 5. "), frame.texts)
        self.assertEqual(self.code(frame), code)
        window.press("Escape")
        frame = window.press("Return")
        self.assertFalse(frame.says("Go on where you were"), frame.texts)  # left on purpose

    def test_a_past_answer_is_looked_at_again_and_tried_again(self):
        window = self.open_practice()
        frame = window.press("q")
        code = self.code(frame)
        self.answer_by_keys(window, frame)
        window.press("Escape")
        window.press("Return")
        window.press("p")
        frame = window.press("o")
        self.assertEqual(self.code(frame), code)
        self.assertTrue(frame.says("You answered"), frame.texts)
        self.assertTrue(frame.says("Answer: "), frame.texts)
        frame = window.click_word("Try it again")
        self.assertEqual(self.code(frame), code)
        self.assertFalse(frame.says("Answer: "), frame.texts)

    def test_a_marked_question_comes_again_when_it_is_wanted(self):
        window = self.open_practice()
        frame = window.press("q")
        code = self.code(frame)
        self.assertTrue(window.click_word("Mark to come back").says("Take the mark off"))
        window.press("Escape")
        window.press("p")
        frame = window.press("m")
        self.assertEqual(self.code(frame), code)
        self.assertTrue(frame.says("1 of 1. "), frame.texts)

    def test_questions_follow_the_units_of_the_person(self):
        window = self.open_practice()
        window.press("u")
        self.assertTrue(window.press("q").says("1 of 5. "))
        for _ in range(5):
            self.answer_by_keys(window, window.frame())
            window.press("Return")
        families = self.setups.parent.parent / "question_bank" / "families"
        for answer in self.answers():
            file = families / f"{answer['family']}.toml"
            if file.exists() and "\nsystem = " not in file.read_text():
                # The first letter of a code says the edition; G to Q is the one in US units.
                self.assertIn(answer["code"][0], "GHJKMNPQ", answer)

    def test_a_term_of_a_question_leads_to_the_glossary_and_back(self):
        window = self.open_practice()
        frame = window.press("q")
        code = self.code(frame)
        frame = window.press("ctrl+g")
        self.assertTrue(frame.says("Close the glossary"), frame.texts)
        frame = window.press("Escape")
        self.assertEqual(self.code(frame), code)
