"""Making handouts in the real window."""

from pathlib import Path

from window_case import WindowTest

OWN = """title = "Before the exam"
paper = "Letter"
[[part]]
skill = "moment-arm-oblique"
count = 3
"""


class Handout(WindowTest):
    """Sheets, their files, and blueprints of one's own."""

    def keep_blueprint(self, name, text):
        folder = Path(self.folder.name) / "steelyard" / "blueprints"
        folder.mkdir(parents=True, exist_ok=True)
        path = folder / name
        path.write_text(text, encoding="utf-8")
        return path

    def open_handout(self, *arguments):
        bench = self.open(*arguments)
        bench.press("F8")
        return bench

    def type_folder(self, bench, folder):
        """Into the field below its name."""
        entry = bench.frame().entry("Into the folder")
        bench.click(round(entry["x"]) + 40, round(entry["y"]) + 28)
        bench.act("key", "ctrl+a")
        bench.act("type", "--delay", 20, str(folder))
        bench.act("key", "Return")

    def test_own_blueprints_stand_beside_the_shipped_ones(self):
        self.keep_blueprint("mine.blueprint.toml", OWN)
        self.keep_blueprint("broken.blueprint.toml", OWN.replace("count", "cuont"))
        bench = self.open_handout()
        frame = bench.frame()
        self.assertTrue(frame.says("Before the exam"))
        self.assertTrue(frame.says("Levers at the boathouse"))
        self.assertTrue(frame.says("broken.blueprint.toml"))
        self.assertTrue(frame.says("line 5"))

    def test_a_sheet_is_put_together_by_mouse_saved_and_opened_again(self):
        bench = self.open_handout()
        bench.click_word("Choose topics yourself (N)")
        frame = bench.frame()
        self.assertTrue(frame.says("Topics"), frame.texts)
        self.assertTrue(frame.says("None chosen"), frame.texts)
        title = frame.entry("Title of the sheet")
        bench.click(round(title["x"]) + 60, round(title["y"]) + 28)
        bench.act("key", "ctrl+a")
        bench.act("type", "--delay", 20, "My evening")
        topics = self.skill_titles()
        bench.click_word(topics["name-the-parts"])
        bench.click_word(topics["lever-class"])
        frame = bench.frame()
        self.assertTrue(frame.says("6 questions."), frame.texts)  # 3 of each
        self.choose_beside(bench, "Questions of each topic", "2")
        self.assertTrue(bench.frame().says("4 questions."))
        bench.act("mousemove", 700, 500)
        for _ in range(40):
            if bench.frame().says("Save as a blueprint") and self.in_sight(bench):
                break
            bench.act("click", 5)
        bench.click_word("Save as a blueprint")
        frame = bench.frame()
        path = Path(self.folder.name) / "steelyard" / "blueprints" / "my-evening.blueprint.toml"
        text = path.read_text(encoding="utf-8")
        self.assertIn('title = "My evening"', text)
        self.assertEqual(text.count("count = 2"), 2)
        self.assertIn('skill = "lever-class"', text)
        self.assertTrue(frame.says("My evening"), frame.texts)
        self.assertFalse(frame.says("Topics"))  # the sheet with its key is shown
        bench.press("n")
        frame = bench.frame()
        self.assertTrue(frame.says("4 questions."), frame.texts)

    @staticmethod
    def in_sight(bench):
        return bench.frame().entry("Save as a blueprint")["y"] < 640

    def skill_titles(self):
        found = {}
        bank = (self.setups.parent.parent / "question_bank" / "skills.toml").read_text()
        for part in bank.split("[[skill]]")[1:]:
            lines = dict(line.split(" = ", 1) for line in part.splitlines() if " = " in line)
            found[lines["id"].strip('"')] = lines["title"].strip('"')
        return found

    @staticmethod
    def choose_beside(bench, name, word):
        """Clicks a word in the row below its name."""
        frame = bench.frame()
        row = frame.entry(name)
        entry = next(e for e in frame.data["texts"]
                     if e["text"] == word and 0 < e["y"] - row["y"] < 40 and e["x"] > 900)
        bench.click(round(entry["x"]) + 3, round(entry["y"]) - 4)

    def test_a_blueprint_is_read_again_whenever_the_place_is_entered(self):
        path = self.keep_blueprint("mine.blueprint.toml", OWN.replace("count", "cuont"))
        bench = self.open_handout()
        self.assertFalse(bench.frame().says("Before the exam"))
        path.write_text(OWN, encoding="utf-8")
        bench.press("F3")
        bench.press("F8")
        self.assertTrue(bench.frame().says("Before the exam"))
        self.assertFalse(bench.frame().says("line 5"))

    def test_a_blueprint_of_ones_own_is_made_into_files(self):
        self.keep_blueprint("evening.blueprint.toml", OWN.replace("Before the exam", "One evening"))
        bench = self.open_handout()
        out = Path(self.folder.name) / "out"
        self.type_folder(bench, out)
        bench.click_word("Make 4 files")
        bench.wait(lambda: bench.frame().says("4 files are there:"), "the files")
        self.assertEqual(sorted(file.name for file in out.iterdir()),
                         ["evening-1-A-key.pdf", "evening-1-A.pdf",
                          "evening-1-B-key.pdf", "evening-1-B.pdf"])

    def test_what_cannot_be_written_is_told(self):
        bench = self.open_handout()
        self.type_folder(bench, "/proc/no-such-folder")
        bench.click_word("Make 4 files")
        bench.wait(lambda: bench.frame().says("/proc/no-such-folder"), "the reason")
        self.assertFalse(bench.frame().says("files are there"))
