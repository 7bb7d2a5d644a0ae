"""Hands on the real window: those that do not know what they do, and those that go on for hours."""

import re
import time
from pathlib import Path

PLACES = tuple(f"F{number}" for number in range(2, 9))
STANCES = ("Standing", "Seated", "Split stance", "On hands and toes", "Hanging", "One leg",
           "Half kneeling", "On the back")


def size_kB(bench):
    """Memory in use. Source: proc(5), /proc/pid/status, VmRSS."""
    status = Path(f"/proc/{bench.process.pid}/status").read_text(encoding="utf-8")
    return int(re.search(r"VmRSS:\s+(\d+) kB", status)[1])


class Hands:
    """Keys, words and numbers by the dice; what they hit is whatever is there."""

    KEYS = ("Left", "Right", "Up", "Down", "shift+Up", "ctrl+Left", "shift+Right", "Tab",
            "shift+Tab", "Return", "Escape", "Insert", "Delete", "h", "u", "d", "o", "Home",
            "plus", "minus", "ctrl+z", "ctrl+y", "ctrl+shift+z", "ctrl+plus", "ctrl+minus",
            "q", "r", "b", "m", "space", "5", "1", "2", "3", "period", "k", "g", "w", "n", "e", "x",
            "c", "v", "BackSpace", "End", "Prior", "Next", "ctrl+s",
            *(f"F{number}" for number in range(1, 13)))

    def __init__(self, bench, dice):
        self.bench, self.dice = bench, dice
        self.done = 0  # events
        self.seen = set()  # what was shown at least once, of what is looked for

    def look_for(self, *words):
        self.seen.update(word for word in words if self.bench.frame().says(word))

    # --- blindly ---------------------------------------------------------------------------------

    def random_event(self):
        dice, kind = self.dice, self.dice.random()
        if kind < 0.40:
            return "mousemove", dice.randrange(1280), dice.randrange(720)
        if kind < 0.55:
            return dice.choice(("mousedown", "mouseup")), 1
        if kind < 0.62:
            return "click", dice.choice((1, 1, 3))
        if kind < 0.70:
            return "click", dice.choice((4, 5))
        if kind < 0.97:
            return "key", "--delay", 0, dice.choice(self.KEYS)
        return ("windowsize", self.bench.window, dice.randrange(480, 1280), dice.randrange(360, 720))

    def flail(self, events):
        words = []
        for _ in range(events):
            words += map(str, self.random_event())
        self.do(*words, events=events)

    # --- with open eyes --------------------------------------------------------------------------

    def do(self, *words, events=1, patience_s=1.0):
        """Does something and lets the window answer; it need not, and it need not rest."""
        before = self.bench.frame_count()
        self.bench.xdotool(*words)
        self.done += events
        messages = self.bench.display.messages
        heard = messages.ping(int(self.bench.window))
        self.bench.wait(lambda: messages.answered(heard), "the window to listen")
        end = time.monotonic() + patience_s
        while self.bench.frame_count() == before and time.monotonic() < end:
            self.bench.wait(lambda: True, "what was done")
            time.sleep(0.005)

    def keys(self, *keys):
        for key in keys:
            self.do("key", key)

    def type(self, text):
        self.do("type", "--delay", "5", text, events=len(text))

    def move(self, x, y):
        """To a place of the window; a grip may lie beside it."""
        self.do("mousemove", str(min(max(0, x), 1279)), str(min(max(0, y), 719)))

    def press_entry(self, entry):
        self.move(round(entry["x"] + 0.5 * entry["width"]), round(entry["y"]) - 4)
        self.do("click", "1")

    def word(self, word):
        """Presses a word where it stands on the screen. @return False where it does not"""
        for entry in self.bench.frame().data["texts"]:
            if entry["text"] == word:
                self.press_entry(entry)
                return True
        return False

    def any_word(self, left_px=0.0):
        """Presses some word of the screen."""
        entries = [entry for entry in self.bench.frame().data["texts"] if entry["x"] >= left_px]
        if entries:
            self.press_entry(self.dice.choice(entries))

    def drag_any_grip(self):
        grips = self.bench.frame().data["grips"]
        if not grips:
            return
        grip = self.dice.choice(grips)
        x, y = round(grip["x"]), round(grip["y"])
        self.move(x, y)
        self.do("mousedown", "1")
        for _ in range(3):
            x, y = x + self.dice.randrange(-60, 61), y + self.dice.randrange(-60, 61)
            self.move(x, y)
        self.do("mouseup", "1")

    # --- errands ---------------------------------------------------------------------------------

    def come_back(self):
        """Out of whatever is open, to the window as it is at first."""
        self.do("mouseup", "1", "mouseup", "3")
        self.do("windowsize", self.bench.window, "1280", "720")
        self.bench.xdotool("windowfocus", self.bench.window)
        self.keys("Escape", "Escape", "Escape")

    def keep_or_leave(self):
        """Opens the page on which a setup is kept, and keeps it or closes the page again."""
        self.keys("ctrl+s")
        self.look_for("Save as one of yours")
        if self.dice.random() < 0.5:
            self.keys("ctrl+a")
            self.type(f"Try {self.dice.randrange(6)}")
            self.keys("Return")
        elif self.dice.random() < 0.5:
            self.any_word()
        self.keys("Escape", "Escape")

    def make_exercise(self):
        self.keys("F4")
        self.word("Exercises")
        self.word("New exercise")
        self.word(self.dice.choice(STANCES))
        self.make_on()

    def make_on(self):
        """Goes on making what is on the body's stage."""
        self.keys("F4")
        if not self.bench.frame().says("Carried by"):
            self.keys("m")
        self.look_for("Carried by")
        for _ in range(self.dice.randrange(4, 16)):
            self.word(self.dice.choice(("Person", "Carried by", "Add a load", "Movement",
                                        "Axes compared", "Seen from")))
            self.any_word(left_px=940.0)
            if self.dice.random() < 0.3:
                self.type(self.dice.choice(("1.92 m", "5 kg", "70 in", "0", "3 s", "-", "1e9")))
                self.keys("Return")
            if self.dice.random() < 0.4:
                self.drag_any_grip()
            if self.dice.random() < 0.2:
                self.keys("ctrl+z")
        self.keep_or_leave()

    def make_lever(self):
        self.keys("F3")
        self.word("Levers")
        self.word("New lever")
        self.look_for("add a corner")
        for _ in range(self.dice.randrange(3, 10)):
            self.drag_any_grip()
            self.any_word()
        self.keep_or_leave()

    def take_from_shelf(self):
        self.keys(self.dice.choice(("F3", "F4", "F5")), "o")
        for _ in range(self.dice.randrange(4)):
            self.keys(self.dice.choice(("Down", "Right", "Left", "Up")))
        if self.dice.random() < 0.2:
            self.word("remove")
            self.word("Put back what was removed")
        self.keys("Return")
        self.drag_any_grip()

    def play(self):
        self.keys("F4", "space")
        time.sleep(0.3)
        self.keys("space", *["Right"] * self.dice.randrange(6))

    def practise(self):
        self.keys("F6")
        if self.bench.frame().says("Your name"):
            self.type("Ada")
            self.keys("Return")
        self.keys("q")
        for _ in range(self.dice.randrange(1, 6)):
            self.keys(self.dice.choice(("1", "b", "2")), "Return", "Return")
        self.keys("Escape", "Escape")

    def teach(self):
        self.keys("F7", *["Down"] * self.dice.randrange(4), "Return")
        self.keys(*["Next"] * self.dice.randrange(1, 8), "Escape", "Return", "Escape")

    def read_on(self):
        self.keys(self.dice.choice(PLACES), self.dice.choice(("F1", "F10", "ctrl+g", "F9", "d", "u")))
        self.any_word()
        self.keys("Escape", "Escape")

    def compare(self):
        self.keys("F5", self.dice.choice(("x", "c", "v", "e", "Down", "Return")))
        self.drag_any_grip()

    def sheet(self):
        self.keys("F8")
        self.any_word()
        self.any_word()
        self.keys("Escape")

    def errand(self):
        self.come_back()
        self.dice.choice((self.make_exercise, self.make_on, self.make_lever, self.take_from_shelf,
                          self.play, self.practise, self.teach, self.read_on, self.compare,
                          self.sheet))()
