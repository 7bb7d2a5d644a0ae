#!/usr/bin/env python3
"""Tests of the real window: mouse and keys through the X server, the screen read back.

    window_test.py PROGRAM SETUPS [--seed N] [--events N] [--minutes N] [CLASS[.TEST]]...

PROGRAM is the built steelyard, SETUPS the folder of shipped setups. HardUse does so many random
events; LongUse, which only runs when it is named, lasts so many minutes. Without Xvfb, xdotool and
ImageMagick's import there is nothing to test on: exit status 77, or 1 where CI is set.
"""

import argparse
import os
import sys
import unittest
from pathlib import Path

from window_body_test import Body
from window_build_test import Build
from window_case import WindowTest
from window_driver import missing_programs
from window_exam_test import Exam
from window_handout_test import Handout
from window_hard_use_test import HardUse
from window_idle_test import Idle
from window_long_use_test import LongUse
from window_own_test import Own
from window_practice_test import ComingBack, Practice
from window_readings_test import Readings
from window_side_by_side_test import SideBySide
from window_sought_test import Sought
from window_whole_test import Beginning, Keeping, Letters, Looks, Opening
from window_workshop_test import Workshop

CASES = (Beginning, Opening, Letters, Readings, Sought, Body, Build, Own, Keeping, Looks, Idle,
         Practice, ComingBack, Exam, SideBySide, Workshop, Handout, HardUse)


def main():
    reader = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    reader.add_argument("program", type=Path)
    reader.add_argument("setups", type=Path)
    reader.add_argument("names", nargs="*", metavar="CLASS[.TEST]")
    reader.add_argument("--seed", type=int, default=WindowTest.seed)
    reader.add_argument("--events", type=int, default=HardUse.EVENTS)
    reader.add_argument("--minutes", type=float, default=LongUse.MINUTES)
    asked = reader.parse_intermixed_args()
    WindowTest.program, WindowTest.setups = str(asked.program.resolve()), asked.setups.resolve()
    WindowTest.seed, HardUse.EVENTS, LongUse.MINUTES = asked.seed, asked.events, asked.minutes
    missing = missing_programs()
    if missing:
        print(f"The window cannot be tested: {', '.join(missing)} not found. On Debian: "
              "apt-get install xvfb xdotool imagemagick")
        return 1 if os.environ.get("CI") else 77
    names = asked.names or [case.__name__ for case in CASES]
    tests = unittest.main(argv=[sys.argv[0], "-v", *names], exit=False)
    return 0 if tests.result.wasSuccessful() else 1


if __name__ == "__main__":
    sys.exit(main())
