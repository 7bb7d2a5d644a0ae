#!/usr/bin/env python3
"""Breaks one formula at a time and looks whether the tests notice.

    tests/mutants/mutants.py                        # every mutant, an hour or more
    tests/mutants/mutants.py learner_tests          # those of one test program
    tests/mutants/mutants.py -k half-life           # those whose sentence has the word
    tests/mutants/mutants.py --list

Run by hand before a release or after a change of the formulas; neither ctest nor CI runs it. For
each row of table.py it puts the broken text into the working tree, builds the one test program
(preset dev, or the one that --preset names), runs it, and puts the file back, also when it is
stopped or the next time it is run.
First the tests that ought to notice are run, then, if they pass, the whole program. It ends with the
mutants that survived; its status is 1 when one did that the table does not expect to.
"""

import argparse
import signal
import subprocess
import sys
from pathlib import Path

sys.dont_write_bytecode = True
from table import MUTANTS  # noqa: E402

ROOT = Path(__file__).resolve().parents[2]
KEPT = ROOT / "build" / "mutants"  # the originals, while a mutant is in their place
LONGEST_S = 1200  # a mutant that loops is noticed


class Broken(Exception):
    """The run means nothing: the tests fail without a mutant, or the table is out of date."""


def put_back():
    """Restores what an earlier run, killed, left broken."""
    for kept in sorted(p for p in KEPT.rglob("*") if p.is_file()):
        path = ROOT / kept.relative_to(KEPT)
        path.write_bytes(kept.read_bytes())
        kept.unlink()
        print(f"put back {path.relative_to(ROOT)}")


class Mutated:
    """The file of a mutant is broken inside a `with`, and whole after it, whatever happens."""

    def __init__(self, mutant):
        self.path = ROOT / mutant.file
        self.kept = KEPT / mutant.file
        text = self.path.read_text(encoding="utf-8")
        if text.count(mutant.text) != 1:
            raise Broken(f"{mutant.file} has {text.count(mutant.text)} times: {mutant.text}")
        self.broken = text.replace(mutant.text, mutant.instead)

    def __enter__(self):
        self.kept.parent.mkdir(parents=True, exist_ok=True)
        self.kept.write_bytes(self.path.read_bytes())
        self.path.write_text(self.broken, encoding="utf-8")

    def __exit__(self, *_):
        self.path.write_bytes(self.kept.read_bytes())
        self.kept.unlink()


def build(options, program):
    built = subprocess.run([*options.build.split(), options.preset, program], cwd=ROOT, text=True,
                           stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    if built.returncode != 0:
        raise Broken(f"{program} does not build:\n{built.stdout[-3000:]}")


def passes(options, program, *tests):
    """Whether a test program, or some of its tests, passes; it stops at the first failure."""
    command = [ROOT / "build" / options.preset / "bin" / program, "--abort", *tests]
    try:
        ran = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                             timeout=LONGEST_S)
    except subprocess.TimeoutExpired:
        return False
    if b"No tests ran" in ran.stdout or b"No test cases matched" in ran.stdout:
        raise Broken(f"{program} has no tests {' '.join(tests)}")
    return ran.returncode == 0


def survives(options, mutant):
    with Mutated(mutant):
        build(options, mutant.program)
        return passes(options, mutant.program, *mutant.tests) and (
            not mutant.tests or passes(options, mutant.program))


def read_options():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("programs", nargs="*", help="test programs; all when none is named")
    parser.add_argument("-k", metavar="WORD", default="", help="only mutants whose row has the word")
    parser.add_argument("--list", action="store_true", help="show the mutants and run nothing")
    parser.add_argument("--build", default=str(ROOT / "scripts" / "build.sh"),
                        help="what builds: called with a preset and a target")
    parser.add_argument("--preset", default="dev", help="the configuration that is built")
    parser.add_argument("--trust", action="store_true",
                        help="do not first see the tests pass without a mutant")
    return parser.parse_args()


def wanted(options):
    return [m for m in MUTANTS
            if (not options.programs or m.program in options.programs)
            and options.k in f"{m.file} {m.says} {m.text}"]


def main():
    options = read_options()
    mutants = wanted(options)
    if options.list:
        for mutant in mutants:
            print(f"{mutant.program:16} {mutant.file}: {mutant.says}")
        return 0
    # Stopped by a signal, the file is put back as by Ctrl-C.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
    put_back()
    programs = sorted({m.program for m in mutants})
    surprises = 0
    try:
        for program in programs:
            build(options, program)
            if not options.trust and not passes(options, program):
                raise Broken(f"{program} fails without any mutant")
        for mutant in mutants:
            survived = survives(options, mutant)
            surprise = survived != bool(mutant.why_unnoticed)
            surprises += surprise
            outcome = "SURVIVED" if survived else "noticed"
            print(f"{outcome:9} {'(!) ' if surprise else ''}{mutant.file}: {mutant.says}",
                  flush=True)
    except Broken as broken:
        print(broken, file=sys.stderr)
        return 2
    print(f"{len(mutants)} mutants, {surprises} not as the table says")
    return 1 if surprises else 0


if __name__ == "__main__":
    sys.exit(main())
