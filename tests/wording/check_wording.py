#!/usr/bin/env python3
"""Checks that what people read uses the trade's words: no text says what has a better name.

    check_wording.py [ROOT]

Looks at the sentences (strings of several words) in the source, the question bank, the lessons, the
exercises and the levers. Prints each finding as file:line: sentence; exit status 1 if there is any.
"""

import re
import sys
from pathlib import Path

# What is not said, and what is said for it.
INSTEAD = [
    (r"square to", "at 90° to, or perpendicular to"),
    (r"upright axis", "vertical axis"),
    (r"level part", "horizontal component"),
    (r"even lever", "uniform lever"),
    (r"(wins?|loses?) (force|distance|speed)", "gains, or trades for"),
    (r"as large as (the load|the effort|all else)('s)?", "equal to"),
    (r"takes? away", "subtract"),
    (r"side raises?", "lateral raise"),
    (r"trunk raises?", "back extension"),
    (r"(in|out)ward rotation", "internal or external rotation"),
    (r"(first|second|third) class lever", "first-class lever, with a hyphen"),
    (r"pain means stop", "the caution in words/caution.h"),
    (r"local codes", "local regulations"),
    (r"shanks?", "lower leg"),
    (r"force times arm", "force times moment arm"),
]
PATTERNS = [(re.compile(rf"\b{pattern}\b", re.IGNORECASE), better) for pattern, better in INSTEAD]

PLACEHOLDER = re.compile(r"\{[^}]*\}")
QUOTED = re.compile(r'"((?:[^"\\]|\\.)*)"')
# Names for machines and formulas are not read by people: one word, or words that are calculated with.
FORMULA = re.compile(r"^[\w.]*$|[*_]|^[^a-z]*$")
PLACES = (("src", "*.cpp"), ("src", "*.h"), ("question_bank", "*.toml"), ("assets", "*.toml"))


def sentences(line: str):
    """The texts of a line that people read."""
    if line.lstrip().startswith(("//", "#")):
        return
    for quoted in QUOTED.finditer(line):
        text = PLACEHOLDER.sub("{}", quoted.group(1))
        if " " in text and not FORMULA.search(text):
            yield text


def findings(path: Path):
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
        for text in sentences(line):
            for pattern, better in PATTERNS:
                if found := pattern.search(text):
                    yield f"{number}: \"{found.group(0)}\": say {better}."


def main() -> int:
    root = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parents[2]
    count = 0
    for folder, ending in PLACES:
        for path in sorted((root / folder).rglob(ending)):
            for finding in findings(path):
                print(f"{path.relative_to(root)}:{finding}")
                count += 1
    return 1 if count else 0


if __name__ == "__main__":
    sys.exit(main())
