#!/usr/bin/env python3
"""The check of the wording finds what it is there to find, and nothing else."""

import tempfile
import unittest
from pathlib import Path

import check_wording


class WordingTest(unittest.TestCase):
    def found(self, line: str) -> list[str]:
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "some.toml"
            path.write_text(line + "\n", encoding="utf-8")
            return list(check_wording.findings(path))

    def test_a_stale_word_in_a_sentence_is_found_with_its_line(self):
        self.assertEqual(self.found('says = "It pulls square to the bone."'),
                         ['1: "square to": say at 90° to, or perpendicular to.'])

    def test_a_stale_word_beside_a_placeholder_is_found(self):
        self.assertEqual(len(self.found('prompt = "Hold the shank {shank_angle} up."')), 1)

    def test_names_formulas_and_comments_are_not_read(self):
        self.assertEqual(self.found('at = { segment = "right_shank", along = 0.9 }'), [])
        self.assertEqual(self.found('by = "own_distance * cos(shank_angle)"'), [])
        self.assertEqual(self.found("# square to the bone"), [])

    def test_the_trades_words_pass(self):
        self.assertEqual(self.found('says = "A first-class lever, at 90° to the bone."'), [])


if __name__ == "__main__":
    unittest.main()
