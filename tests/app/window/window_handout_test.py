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
