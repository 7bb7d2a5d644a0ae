#!/usr/bin/env python3
"""What may befall the record: kill -9, a full disk, a cut file, two programs, a wrong clock.

Drives the built program from outside, as people do; every choice follows from the seed, which is
printed. Takes minutes, so that CI does not run it:

    tests/faults/faults.py build/release/bin/steelyard [--seed N] [--rounds N] [SUBJECT ...]

Subjects: terminal, window, disk, cut, two, clock; all when none is named. The window needs Xvfb and
xdotool. Ends with 1 and says which promise was broken, in which round.
"""

import argparse
import errno
import json
import os
import pty
import random
import resource
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
PAGE = 4096
LONGEST_WAIT_S = 60.0


class Broken(Exception):
    """A promise that was not kept."""


def must(holds, what):
    if not holds:
        raise Broken(what)


class Program:
    """The program with a record in a folder of its own."""

    def __init__(self, path, folder):
        self.path, self.folder = path, Path(folder)
        self.environment = {**os.environ, "HOME": str(folder), "XDG_DATA_HOME": str(folder),
                            "XDG_STATE_HOME": str(folder)}

    def run(self, *arguments, **options):
        done = subprocess.run([self.path, *arguments], env=self.environment, capture_output=True,
                              text=True, **options)
        must(done.returncode >= 0, f"{arguments} ended by signal {-done.returncode}:\n{done.stderr}")
        return done

    def answers(self, learner="Ada"):
        done = self.run("record", "export", "--learner", learner)
        if done.returncode != 0:
            return []
        lines = [json.loads(line) for line in done.stdout.splitlines()]
        return [line["answer"] for line in lines if "answer" in line]

    def check(self, what):
        done = self.run("record", "check")
        must(done.returncode == 0 and "In order." in done.stdout,
             f"{what}: the record is not in order\n{done.stdout}{done.stderr}")
        return done.stderr

    @property
    def record(self):
        return self.folder / "steelyard" / "record.sqlite"


class Sitting:
    """`steelyard learn` at a terminal of its own; somebody who always shrugs."""

    def __init__(self, program, seed, learner="Ada", largest=None):
        def limit():
            if largest is not None:
                signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
                resource.setrlimit(resource.RLIMIT_FSIZE, (largest, largest))
        self.child, self.terminal = pty.fork()
        if self.child == 0:
            limit()
            os.execve(program.path, ["steelyard", "learn", "--learner", learner, "--new", "--seed",
                                     str(seed), "--no-placement", "--count", "100"],
                      program.environment)
        self.text = ""
        self.read_to = 0
        self.shrugs = 0  # that something was said to
        self.over = False

    def hear(self, patience_s=0.02):
        """Takes in what was written. @return False at the end"""
        ready, _, _ = select.select([self.terminal], [], [], patience_s)
        if not ready:
            return True
        try:
            news = os.read(self.terminal, 65536)
        except OSError as error:
            if error.errno != errno.EIO:
                raise
            news = b""
        self.over = not news
        self.text += news.decode(errors="replace")
        return not self.over

    def wait_for_prompt(self):
        end = time.monotonic() + LONGEST_WAIT_S
        while not self.text[self.read_to:].endswith(": "):
            if not self.hear(1.0):
                return False
            must(time.monotonic() < end, "no prompt:\n" + self.text[-2000:])
        return True

    def answer(self):
        """Answers one prompt and waits for the next. @return False when it has ended"""
        asked = self.text[self.read_to:]
        self.read_to = len(self.text)
        example = "Enter to go on" in asked
        os.write(self.terminal, b"\n" if example else b"?\n")
        if not self.wait_for_prompt():
            return False
        self.shrugs += not example
        return True

    def end(self, number=signal.SIGKILL):
        if number:
            os.kill(self.child, number)
        while not self.over and self.hear(5.0):
            pass
        os.close(self.terminal)
        return os.waitpid(self.child, 0)[1]


def shrugs_in(program, learner="Ada"):
    return sum(answer["outcome"] == "gave_up" for answer in program.answers(learner))


def kill_terminal(program, dice, rounds):
    """Whatever was said to an answer, the answer is there after kill -9 at any moment."""
    told = 0
    for number in range(rounds):
        sitting = Sitting(program, dice.randrange(1000000))
        must(sitting.wait_for_prompt(), "no first prompt:\n" + sitting.text)
        for _ in range(dice.randrange(4)):
            must(sitting.answer(), "ended by itself:\n" + sitting.text[-2000:])
        # The last answer is killed somewhere between the key and the next prompt.
        os.write(sitting.terminal, b"\n" if "Enter to go on" in sitting.text[-200:] else b"?\n")
        time.sleep(dice.random() * 0.03)
        sitting.end()
        there = shrugs_in(program)
        told += sitting.shrugs
        must(told <= there <= told + 1, f"round {number}: {told} answers were told, {there} are kept")
        told = there
        said = program.check(f"round {number}")
        must(said == "", f"round {number}: something was said of a record that lost nothing: {said}")
    return f"{rounds} kills, {told} answers, none lost"


def kill_window(program, dice, rounds):
    """The same in the window: what a frame told is kept."""
    sys.path.insert(0, str(HERE.parent / "app" / "window"))
    from window_driver import Bench, Display, missing_programs
    if missing_programs():
        return "skipped: needs " + ", ".join(missing_programs())
    display = Display()
    told = 0
    try:
        for number in range(rounds):
            window = Bench(display, program.path, program.folder)
            frame = window.press("F6")
            if frame.says("Your name"):
                window.act("type", "--delay", 20, "Ada")
                window.press("Return")
            frame = window.press("q")
            for _ in range(dice.randrange(1, 4)):
                if frame.says("Choose them in order"):
                    window.press("1", "2", "3", "4", "5", "6", "7")
                elif frame.says("Type a number"):
                    window.act("type", "--delay", 20, "1")
                elif frame.says("Choose"):
                    window.press("1")
                else:
                    window.press("b")
                frame = window.press("Return")
                if not frame.says("Answer: "):
                    break
                told += 1
                frame = window.press("Return")
            window.xdotool("key", "1", "Return")
            time.sleep(dice.random() * 0.05)
            window.kill()
            window.errors.close()
            there = sum(answer["attempt"] == 1 for answer in program.answers())
            must(told <= there <= told + 1,
                 f"round {number}: {told} answers were told, {there} are kept")
            told = there
            said = program.check(f"round {number}")
            must(said == "", f"round {number}: {said}")
            for name in ("preferences.json", "bench.json", "body.json"):
                state = program.folder / "steelyard" / name
                if state.exists():
                    json.loads(state.read_text(encoding="utf-8"))
    finally:
        display.close()
    return f"{rounds} kills, {told} answers, none lost"


CLAIMS = ("Kept", "is kept", "are kept", "A record for")


def full_disk(program, dice, rounds):
    """On a disk that fills up at any byte: what was told as kept is, and the rest is owned up to."""
    stopped = 0
    for number in range(rounds):
        shutil.rmtree(program.folder / "steelyard", ignore_errors=True)
        largest = dice.choice((0, 1, 4095, 4096, 8192, 32768, 32769, 40000, 65536, 70000, 100000,
                               200000, 300000, dice.randrange(500000)))
        sitting = Sitting(program, dice.randrange(1000000), largest=largest)
        going = sitting.wait_for_prompt()
        for _ in range(12):
            going = going and sitting.answer()
        status = sitting.end(signal.SIGKILL if going else None)
        must(going or os.WIFEXITED(status), f"{largest} bytes: ended by a signal\n{sitting.text}")
        there = shrugs_in(program)
        must(sitting.shrugs <= there <= sitting.shrugs + 1,
             f"{largest} bytes: {sitting.shrugs} answers were told, {there} are kept\n"
             + sitting.text[-3000:])
        if not going:
            stopped += 1
            must(os.WEXITSTATUS(status) != 0, f"{largest} bytes: ended as if all were well")
            must("not kept" in sitting.text or "cannot" in sitting.text or "full" in sitting.text
                 or "disk" in sitting.text,
                 f"{largest} bytes: nothing was said of it\n{sitting.text[-2000:]}")
            last = sitting.text[-1500:]
            must(not any(claim in last for claim in CLAIMS[:3]), f"{largest} bytes: claims\n{last}")
        # There is room again.
        program.run("record", "check")
        program.check(f"{largest} bytes")
    return f"{rounds} disks, {stopped} of them full before the end"


def make_answers(program, count, learner="Ada", first=0):
    lines = [json.dumps({"steelyard_record": 1, "learner": learner, "exam_day": ""})]
    for i in range(first, first + count):
        lines.append(json.dumps({"answer": {
            "at_ms": 1700000000000 + 60000 * i, "code": f"CODE{i}", "skill": "balance",
            "family": "f", "outcome": "right" if i % 3 else "wrong", "guess": 0.1,
            "foreseen": 0.5}}))
    file = program.folder / "answers.jsonl"
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    done = program.run("record", "import", str(file))
    must(done.returncode == 0, done.stdout + done.stderr)


def cut_file(program, dice, _rounds):
    """A record cut at every page, and a byte beside: restored from its backup, or what can be read."""
    make_answers(program, 400)  # an import backs up
    make_answers(program, 50, first=400)
    whole = program.record.read_bytes()
    backups = {path: path.read_bytes() for path in (program.folder / "steelyard/backups").iterdir()}
    must(len(backups) == 1, f"{len(backups)} backups")
    cuts = []
    for page in range(len(whole) // PAGE + 1):
        cuts += [page * PAGE, max(0, page * PAGE - dice.randrange(1, PAGE))]
    for cut in sorted(set(cuts)):
        shutil.rmtree(program.folder / "steelyard")
        program.record.parent.mkdir()
        program.record.write_bytes(whole[:cut])
        for path, content in backups.items():
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(content)
        said = program.run("record", "check").stderr
        there = len(program.answers())
        must(there >= 400, f"cut to {cut} bytes: {there} of 400 answers that were in a backup")
        must(cut == len(whole) or "backup" in said, f"cut to {cut} bytes: not a word\n{said}")
        program.check(f"cut to {cut} bytes")
    return f"{len(set(cuts))} cuts of {len(whole)} bytes"


def two_programs(program, dice, rounds):
    """Two sittings at once in one record: every answer of both is there."""
    told = {"Ada": 0, "Ben": 0}
    for number in range(max(1, rounds // 10)):
        sittings = {name: Sitting(program, dice.randrange(1000000), name) for name in told}
        for sitting in sittings.values():
            must(sitting.wait_for_prompt(), "no first prompt:\n" + sitting.text)
        for _ in range(10):
            must(sittings[dice.choice(("Ada", "Ben"))].answer(), "ended by itself")
        for name, sitting in sittings.items():
            sitting.end(dice.choice((signal.SIGKILL, signal.SIGTERM)))
            told[name] += sitting.shrugs
        for name, count in told.items():
            there = shrugs_in(program, name)
            must(there == count, f"round {number}: {count} answers of {name} told, {there} kept")
        must(program.check(f"round {number}") == "", f"round {number}: said something")
    return f"{sum(told.values())} answers of two"


def wrong_clock(program, _dice, _rounds):
    """A clock that was in the future, and one that was set back: backups go on being made."""
    backups = program.folder / "steelyard" / "backups"
    make_answers(program, 10)
    for path in backups.iterdir():
        for day in range(1, 9):
            shutil.copy(path, backups / f"record-2099-01-0{day}-00000000.sqlite")
        path.unlink()
    make_answers(program, 10, first=100)
    made = [path for path in backups.iterdir() if "2099" not in path.name]
    must(len(made) == 1, "no backup beside those of a clock in the future")
    for path in backups.iterdir():
        must("2099" in path.name or path in made, path.name)
    program.record.unlink()
    said = program.run("record", "check").stderr
    must("2099" not in said and len(program.answers()) == 20, "a backup of the future was taken")
    program.check("after the clock")
    return "backups of 2099 neither stop nor displace today's"


SUBJECTS = {"terminal": kill_terminal, "window": kill_window, "disk": full_disk, "cut": cut_file,
            "two": two_programs, "clock": wrong_clock}


def main():
    reader = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    reader.add_argument("program")
    reader.add_argument("subjects", nargs="*", metavar="SUBJECT", choices=[*SUBJECTS, []])
    reader.add_argument("--seed", type=int, default=20261201)
    reader.add_argument("--rounds", type=int, default=100)
    wanted = reader.parse_args()
    broken = 0
    for name in wanted.subjects or SUBJECTS:
        begun = time.monotonic()
        with tempfile.TemporaryDirectory(prefix="steelyard-faults-") as folder:
            program = Program(str(Path(wanted.program).resolve()), folder)
            try:
                result = SUBJECTS[name](program, random.Random(f"{wanted.seed} {name}"),
                                        wanted.rounds)
            except Broken as broke:
                broken += 1
                result = f"BROKEN: {broke}"
        print(f"{name} (seed {wanted.seed}): {result}; {time.monotonic() - begun:.0f} s", flush=True)
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
