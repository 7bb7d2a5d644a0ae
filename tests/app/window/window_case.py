"""What all tests of the real window share: a display, the program, what every frame has to keep."""

import re
import unittest
from pathlib import Path

from window_driver import Bench, Display, temporary_folder

# A dash within a question's code ("FAKYS-0NG9B") is no sign.
WORTHLESS = re.compile(r"(?<![a-z])(?:nan|inf|infinity)(?![a-z])|"
                       r"(?<![a-z0-9])[-−]0(?:\.0+)?(?![\d.a-z])", re.I)


class WindowTest(unittest.TestCase):
    program = ""     # the built steelyard
    setups = Path()  # the folder of shipped setups
    seed = 20260101  # of what dice decide

    @classmethod
    def setUpClass(cls):
        cls.display = Display()

    @classmethod
    def tearDownClass(cls):
        cls.display.close()

    def setUp(self):
        self.begin_as_a_newcomer()

    def begin_as_a_newcomer(self):
        """From here on nothing of what earlier runs kept is found."""
        self.folder = temporary_folder()
        self.addCleanup(self.folder.cleanup)

    def open(self, *arguments, **options):
        bench = Bench(self.display, self.program, self.folder.name, *arguments, **options)
        self.addCleanup(bench.end)
        self.addCleanup(self.check_every_text, bench)
        bench.aside()
        return bench

    def open_seesaw(self):
        return self.open(self.setups / "seesaw.setup.toml")

    def check_every_text(self, bench):
        """No frame of any test ever shows what is not a number."""
        self.check_texts(bench.frames())

    def check_texts(self, frames):
        for frame in frames:
            for text in frame.texts:
                self.assertIsNone(WORTHLESS.search(text), f"frame {frame.number}: '{text}'")
