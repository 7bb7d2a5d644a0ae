"""Random events on the real window."""

import json
import os
import random
import re
import subprocess

from window_case import WindowTest


class HardUse(WindowTest):
    """Hands that do not know what they do."""

    def test_random_events_leave_it_running(self):
        seed = 20260101
        hand = random.Random(seed)
        bench = self.open_seesaw()
        keys = ["Left", "Right", "Up", "Down", "shift+Up", "ctrl+Left", "shift+Right", "Tab",
                "shift+Tab", "Return", "Escape", "Insert", "Delete", "h", "u", "d", "o", "Home",
                "plus", "minus", "ctrl+z", "ctrl+y", "ctrl+shift+z", "ctrl+plus", "ctrl+minus",
                "q", "r", "b", "space", "5", "1", "2", "3", "period", "k", "g", "w", "n", "e", "x", "c",
                "BackSpace", "End", "Prior", "Next", *(f"F{number}" for number in range(1, 13))]
        wanted, done = int(os.environ.get("RANDOM_EVENTS", 2000)), 0
        while done < wanted:
            words = []
            for _ in range(200):
                words += map(str, self.random_event(hand, keys, bench))
            done += 200
            bench.xdotool(*words)
            self.assertIsNone(bench.process.poll(), f"ended after {done} events:\n{bench.said()}")
        bench.xdotool("mouseup", 1, "mouseup", 3, "key", "Escape", "Escape")
        status = bench.ask_to_close()
        said = bench.said()
        self.assertNotRegex(said, "ERROR: AddressSanitizer|runtime error")
        # The graphics driver is unloaded by then: its leaks, and only its, are of unknown modules.
        ours = [leak for leak in said.split("\n\n")
                if " leak of " in leak and re.search(r"#[1-9]\d* .*/steelyard\b", leak)]
        self.assertEqual(ours, [])
        self.assertTrue(status == 0 or "LeakSanitizer" in said, said)
        kept = json.loads((bench.folder / "steelyard" / "bench.json").read_text(encoding="utf-8"))
        setup = bench.folder / "kept.setup.toml"
        setup.write_text(kept["setup"], encoding="utf-8")
        subprocess.run([self.program, "solve", str(setup)], check=True, capture_output=True)

    @staticmethod
    def random_event(hand, keys, bench):
        kind = hand.random()
        if kind < 0.40:
            return "mousemove", hand.randrange(1280), hand.randrange(720)
        if kind < 0.55:
            return hand.choice(("mousedown", "mouseup")), 1
        if kind < 0.62:
            return "click", hand.choice((1, 1, 3))
        if kind < 0.70:
            return "click", hand.choice((4, 5))
        if kind < 0.97:
            return "key", "--delay", 0, hand.choice(keys)
        return ("windowsize", bench.window, hand.randrange(480, 1280), hand.randrange(360, 720))
