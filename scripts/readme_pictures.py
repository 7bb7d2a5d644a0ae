"""Takes the README's pictures anew, from the real window on a virtual display:

    scripts/readme_pictures.py PROGRAM

Writes assets/pictures/*.png. Look at them before you commit them.
"""

import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests" / "app" / "window"))
from window_driver import Bench, Display  # noqa: E402

SETUPS = ROOT / "assets" / "setups"
MOST_QUESTIONS = 80


class Camera:
    def __init__(self, program):
        self.program = program
        self.display = Display()

    def open(self, folder, *arguments):
        window = Bench(self.display, self.program, folder, *arguments)
        window.aside()
        return window

    def take(self, name):
        self.display.screenshot().save(ROOT / "assets" / "pictures" / f"{name}.png")
        print(f"assets/pictures/{name}.png")


def bench(camera, folder):
    window = camera.open(folder, SETUPS / "wheelbarrow.setup.toml")
    window.click_word("Effort")
    camera.take("bench")
    return window


def body(camera, folder):
    window = camera.open(folder, SETUPS / "body" / "hinge-bar-drifting.setup.toml")
    camera.take("body")
    return window


def side_by_side(camera, folder):
    window = camera.open(folder)
    window.click_word("Side by side")
    window.wait(lambda: window.frame().says("Most natural first"), "the list of ways")
    window.rest()
    camera.take("side-by-side")
    return window


def workshop(camera, folder):
    window = camera.open(folder, SETUPS / "seesaw.setup.toml")
    window.press("w")
    window.press("Down")
    window.press("Return")  # "How long is the arm?"
    for guess in ("250", "300 N"):
        window.act("type", "--delay", 30, guess)
        window.press("Return")
    window.press("space")
    camera.take("workshop")
    return window


def as_ada(camera, folder):
    window = camera.open(folder)
    window.press("F6")
    window.act("type", "--delay", 20, "Ada")
    window.press("Return")
    return window


def practice(camera, folder):
    """A place that was marked wrong: questions are passed over until a place is asked."""
    window = as_ada(camera, folder)
    window.press("p")
    frame = window.click_word("Practise the chosen step")
    if frame.says("Leave these pages"):
        frame = window.click_word("Leave these pages")
    for _ in range(MOST_QUESTIONS):
        if frame.says("Drag the point along the lever."):
            break
        frame = window.press("Return" if frame.says("I have read it") else "n")
        if frame.says("Another one"):
            frame = window.press("a")
    window.drag("placed", -90)
    if window.press("Return").says("Not yet"):
        window.press("Return")  # the second try, at the same place
    camera.take("practice")
    return window


def exam(camera, folder):
    """Some way into a mock exam: answers, gaps, and questions to come back to."""
    window = as_ada(camera, folder)
    window.press("e")
    frame = window.press("Return")
    for number in range(1, 19):
        typed = frame.says("Type a number")
        if number % 6 == 0:
            window.press("ctrl+m" if typed else "m")
        elif typed:
            window.act("type", "12")
        else:
            window.press("1")
        frame = window.press("Next")
    window.aside()
    camera.take("exam")
    return window


if __name__ == "__main__":
    camera = Camera(sys.argv[1])
    for picture in (bench, body, side_by_side, workshop, practice, exam):
        with tempfile.TemporaryDirectory() as own_folder:
            picture(camera, own_folder).end()
    camera.display.close()
