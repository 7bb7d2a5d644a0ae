"""Drives the real window on a display of its own: Xvfb, xdotool and the window's narration."""

import ctypes
import json
import math
import os
import re
import shutil
import signal
import subprocess
import tempfile
import time
from collections import Counter
from pathlib import Path

from window_drop import drop_file

# A slow machine under a sanitizer needs long: waits end as soon as what is waited for has come.
LONGEST_WAIT_S = 240.0


def missing_programs():
    return [name for name in ("Xvfb", "xdotool", "import") if shutil.which(name) is None]


class Display:
    """An X server of our own, on whatever display number is free."""

    def __init__(self, width=1280, height=720):
        read_end, write_end = os.pipe()
        self.process = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write_end), "-screen", "0", f"{width}x{height}x24",
             "-nolisten", "tcp"],
            pass_fds=[write_end], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write_end)
        with os.fdopen(read_end) as number:
            self.name = ":" + number.readline().strip()
        self.messages = Messages(self.name)

    def run(self, *command, **options):
        return subprocess.run(command, env={**os.environ, "DISPLAY": self.name}, check=True,
                              capture_output=True, **options).stdout

    def screenshot(self):
        """Width, height and the pixels as (red, green, blue), row by row."""
        data = self.run("import", "-window", "root", "-depth", "8", "ppm:-")
        header = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", data)
        return Picture(int(header[1]), int(header[2]), data[header.end():])

    def close(self):
        self.messages.close()
        self.process.terminate()
        self.process.wait()


class Picture:
    def __init__(self, width, height, pixels):
        self.width, self.height, self.pixels = width, height, pixels

    def at(self, x, y):
        start = 3 * (y * self.width + x)
        return tuple(self.pixels[start:start + 3])

    def save(self, path):
        """As PNG, by ImageMagick."""
        subprocess.run(["convert", "ppm:-", str(path)], check=True,
                       input=b"P6 %d %d 255\n" % (self.width, self.height) + self.pixels)

    def colours(self, left=0, top=0, right=None, bottom=None):
        """How often each colour occurs in a rectangle."""
        right, bottom = right or self.width, bottom or self.height
        return Counter(self.at(x, y) for y in range(max(0, int(top)), min(self.height, int(bottom)))
                       for x in range(max(0, int(left)), min(self.width, int(right))))


class Bench:
    """One run of the program; `folder` keeps its state and narration."""

    def __init__(self, display, program, folder, *arguments, size="1280x720"):
        self.display, self.program, self.folder = display, program, Path(folder)
        self.opened = next((Path(name) for name in arguments), None)
        self.narration = self.folder / "narration.jsonl"
        self.narration.unlink(missing_ok=True)
        self.told = []  # the lines of the frames
        self.told_to_presenter = []  # those of the presenter's window
        self.resting = self.kept = self.over = False
        self.rests = 0  # how often the window said that it rests
        self.read_to = 0
        self.environment = {**os.environ, "DISPLAY": display.name,
                            "XDG_STATE_HOME": str(self.folder),
                            "XDG_DATA_HOME": str(self.folder)}
        self.errors = open(self.folder / "errors.txt", "w+", encoding="utf-8")
        self.process = subprocess.Popen(
            [program, "--size", size, "--narration", str(self.narration), *map(str, arguments)],
            env=self.environment, stderr=self.errors)
        self.wait(lambda: self.frame_count() > 0, "the first frame")
        self.window = self.xdotool("search", "--sync", "--pid", str(self.process.pid)).split()[-1]
        self.xdotool("windowfocus", self.window)
        self.rest()

    # --- what the window shows -------------------------------------------------------------------

    def follow(self):
        """Takes in what was narrated since the last time; lines that are not whole are left."""
        if self.over or not self.narration.exists():
            return
        with open(self.narration, "rb") as file:
            file.seek(self.read_to)
            news = file.read()
        whole = news[:news.rfind(b"\n") + 1]
        self.read_to += len(whole)
        for line in whole.splitlines():
            if line.startswith(b'{"kept"'):
                state = json.loads(line)
                self.resting, self.kept = state["rest"], state["kept"]
                self.rests += self.resting
            elif line.endswith(b'"window":"presenter"}'):
                self.told_to_presenter.append(line)
            else:
                self.told.append(line)

    def frame_count(self):
        self.follow()
        return len(self.told)

    def frames(self):
        self.follow()
        return [Frame(json.loads(line)) for line in self.told]

    def frame(self, number=-1):
        self.follow()
        return Frame(json.loads(self.told[number]))

    def forget(self):
        """All frames but the last, each once: those of hours do not fit into memory."""
        self.follow()
        old, self.told = self.told[:-1], self.told[-1:]
        return (Frame(json.loads(line)) for line in old)

    def presenter(self):
        """What the presenter's window shows."""
        self.follow()
        return Frame(json.loads(self.told_to_presenter[-1]))

    # --- time ------------------------------------------------------------------------------------

    def wait(self, is_so, what):
        end = time.monotonic() + LONGEST_WAIT_S
        while not is_so():
            if self.process.poll() is not None:
                raise AssertionError(f"the program ended with {self.process.returncode} before "
                                     f"{what}:\n{self.said()}")
            if time.monotonic() > end:
                raise AssertionError(f"waited {LONGEST_WAIT_S} s in vain for {what}")
            time.sleep(0.01)

    def rest(self):
        """Waits until the window has heard of all that was done to it and says that it rests; the
        last frame shows what is so now."""
        messages = self.display.messages
        heard = messages.ping(int(self.window))
        self.wait(lambda: messages.answered(heard), "the window to listen")
        self.follow()
        before = self.rests
        # It may have come to rest before that was counted: another message makes it say so again.
        messages.ping(int(self.window))
        self.wait(self.rests_again(before), "the window to rest")
        return self.frame()

    def rests_again(self, before):
        def is_so():
            self.follow()
            return self.rests > before
        return is_so

    # --- hands -----------------------------------------------------------------------------------

    def xdotool(self, *words):
        return self.display.run("xdotool", *map(str, words)).decode()

    def act(self, *words):
        """Does what must be answered by a frame, and waits until all is at rest."""
        before = self.frame_count()
        self.xdotool(*words)
        self.wait(lambda: self.frame_count() > before, f"a frame after {words}")
        return self.rest()

    def aside(self):
        """Takes the pointer to where nothing is, so that no caption follows it."""
        self.xdotool("mousemove", 520, 590)
        return self.rest()

    def press(self, *keys):
        return self.act("key", *keys)

    def click(self, x, y):
        self.act("mousemove", x, y)
        self.act("click", 1)
        return self.aside()

    def click_word(self, word):
        x, y = self.frame().place_of(word)
        return self.click(x, y)

    def drag(self, grip, along, up=0, release=True):
        """Drags a grip by some pixels, in steps as a hand does."""
        x, y = self.frame().grip(grip)
        x, y = round(x), round(y)
        self.act("mousemove", x, y)
        self.xdotool("mousedown", 1)
        for share in (0.25, 0.5, 0.75, 1.0):
            self.act("mousemove", round(x + share * along), round(y - share * up))
        if release:
            self.act("mouseup", 1)
            return self.aside()
        return self.frame()

    def type_into(self, grip, text):
        """Double-clicks a grip and types a text there."""
        x, y = self.frame().grip(grip)
        self.act("mousemove", round(x), round(y))
        self.act("click", "--repeat", 2, "--delay", 80, 1)
        self.act("type", "--delay", 30, text)
        return self.press("Return")

    def drop(self, path):
        """Drops a file on the window, as from a file manager."""
        before = self.frame_count()
        drop_file(self.display.name, int(self.window), path)
        self.wait(lambda: self.frame_count() > before, "a frame after the drop")
        return self.rest()

    # --- ends ------------------------------------------------------------------------------------

    def kept_file(self, name):
        """A file of the person's state, once all that was done is kept."""
        def is_kept():
            self.follow()
            return self.resting and self.kept
        self.wait(is_kept, "what was done to be kept")
        return self.folder / "steelyard" / name

    def saved(self):
        """The setup on the bench as a file, once it was kept; before the first change, what was
        opened."""
        kept = self.kept_file("bench.json")
        if not kept.exists():
            return self.opened
        setup = self.folder / "bench.setup.toml"
        setup.write_text(json.loads(kept.read_text(encoding="utf-8"))["setup"], encoding="utf-8")
        return setup

    def solved(self):
        """The solver's own words about the kept setup."""
        out = subprocess.run([self.program, "solve", "--json", str(self.saved())], check=True,
                             capture_output=True).stdout
        return json.loads(out)

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()
        self.hear_the_end()

    def hear_the_end(self):
        """The next run in this folder writes its own narration: what it tells is not this one's."""
        self.follow()
        self.over = True

    def ask_to_close(self):
        """What a window manager does when the person closes the window."""
        self.display.messages.close_window(int(self.window))
        status = self.process.wait(timeout=LONGEST_WAIT_S)
        self.hear_the_end()
        return status

    def said(self):
        self.errors.flush()
        return (self.folder / "errors.txt").read_text(encoding="utf-8", errors="replace")

    def end(self):
        if self.process.poll() is None:
            self.kill()
        self.errors.close()


class Frame:
    """One frame of the narration."""

    COLUMN_SHARE = 0.74

    def __init__(self, data):
        self.number, self.data = data["frame"], data
        self.texts = [text["text"] for text in data["texts"]]

    def says(self, part):
        return any(part in text for text in self.texts)

    def entry(self, text):
        for entry in self.data["texts"]:
            if entry["text"] == text:
                return entry
        raise AssertionError(f"'{text}' is not on the screen: {self.texts}")

    def place_of(self, text):
        entry = self.entry(text)
        return round(entry["x"] + 0.5 * entry["width"]), round(entry["y"] - 4)

    def grip(self, name):
        for grip in self.data["grips"]:
            if grip["text"] == name:
                return grip["x"], grip["y"]
        raise AssertionError(f"there is no grip '{name}': {[g['text'] for g in self.data['grips']]}")

    def letters_at(self, word):
        """The letters at a word while letters stand at everything that can be pressed. They stand at
        the left of what is pressed, which may be wider than its word, never a row away."""
        entry = self.entry(word)

        def away(other):
            return math.hypot(other["x"] - entry["x"], 4.0 * (other["y"] - entry["y"]))
        letters = [other for other in self.data["texts"]
                   if re.fullmatch(r"[A-Z]{1,2}", other["text"])]
        return min(letters, key=away)["text"].lower()

    def rows(self):
        """Name to value of every line of the column."""
        column = [entry for entry in self.data["texts"] if entry["x"] > 940.0]
        rows = {}
        for name in column:
            for value in column:
                if value["y"] == name["y"] and value["x"] > name["x"] + name["width"]:
                    rows.setdefault(name["text"], value["text"])
        return rows

    def readings(self):
        """The rows, and the advantage that stands large on the bench."""
        above = self.entry("Mechanical advantage")
        below = (entry for entry in self.data["texts"]
                 if entry["x"] == above["x"] and entry["y"] > above["y"])
        return {**self.rows(), "Mechanical advantage":
                min(below, key=lambda entry: entry["y"])["text"]}


class _ClientMessage(ctypes.Structure):
    """XClientMessageEvent with room for the longest event (Xlib.h)."""
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int),
                ("display", ctypes.c_void_p), ("window", ctypes.c_ulong),
                ("message_type", ctypes.c_ulong), ("format", ctypes.c_int),
                ("data", ctypes.c_long * 5), ("room", ctypes.c_long * 12)]


class Messages:
    """What a window manager says to a window, as the protocols WM_DELETE_WINDOW (Inter-Client
    Communication Conventions Manual, 4.2.8.1) and _NET_WM_PING (Extended Window Manager Hints) have
    it. A window answers a ping when it has taken all events that were sent before."""

    CLIENT_MESSAGE, SUBSTRUCTURE_NOTIFY = 33, 1 << 19  # X.h

    def __init__(self, display_name):
        self.x11 = ctypes.CDLL("libX11.so.6")
        self.x11.XOpenDisplay.restype = ctypes.c_void_p
        self.x11.XDefaultRootWindow.restype = self.x11.XInternAtom.restype = ctypes.c_ulong
        self.display = ctypes.c_void_p(self.x11.XOpenDisplay(display_name.encode()))
        self.root = ctypes.c_ulong(self.x11.XDefaultRootWindow(self.display))
        self.x11.XSelectInput(self.display, self.root, ctypes.c_long(self.SUBSTRUCTURE_NOTIFY))
        self.pings = self.answers = 0

    def atom(self, name):
        return self.x11.XInternAtom(self.display, name, 0)

    def send(self, window, protocol, number=0):
        message = _ClientMessage(type=self.CLIENT_MESSAGE, window=window, format=32)
        message.message_type = self.atom(b"WM_PROTOCOLS")
        message.data[0], message.data[1], message.data[2] = self.atom(protocol), number, window
        self.x11.XSendEvent(self.display, ctypes.c_ulong(window), 0, ctypes.c_long(0),
                            ctypes.byref(message))
        self.x11.XFlush(self.display)

    def close_window(self, window):
        self.send(window, b"WM_DELETE_WINDOW")

    def ping(self, window):
        self.pings += 1
        self.send(window, b"_NET_WM_PING", self.pings)
        return self.pings

    def answered(self, serial):
        while self.x11.XPending(self.display):
            event = _ClientMessage()
            self.x11.XNextEvent(self.display, ctypes.byref(event))
            if event.type == self.CLIENT_MESSAGE and event.data[0] == self.atom(b"_NET_WM_PING"):
                self.answers = max(self.answers, event.data[1])
        return self.answers >= serial

    def close(self):
        self.x11.XCloseDisplay(self.display)


def temporary_folder():
    return tempfile.TemporaryDirectory(prefix="steelyard-window-")
