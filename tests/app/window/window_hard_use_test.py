"""Random events on the real window."""

import json
import os
import random
import re
import subprocess
from pathlib import Path

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
        sizes_kB = []
        while done < wanted:
            if done % 2000 == 0:
                sizes_kB.append(self.size_kB(bench))
            words = []
            for _ in range(200):
                words += map(str, self.random_event(hand, keys, bench))
            done += 200
            bench.xdotool(*words)
            self.assertIsNone(bench.process.poll(), f"ended after {done} events:\n{bench.said()}")
        self.check_sizes(sizes_kB)
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
    def size_kB(bench):
        """Memory in use. Source: proc(5), /proc/pid/status, VmRSS."""
        status = Path(f"/proc/{bench.process.pid}/status").read_text(encoding="utf-8")
        return int(re.search(r"VmRSS:\s+(\d+) kB", status)[1])

    def check_sizes(self, sizes_kB):
        """Once every place has been seen, memory stays as it is: a long run (RANDOM_EVENTS of
        20,000 and more) has no more in its last quarter than in its second, but for a tenth."""
        quarter = len(sizes_kB) // 4
        if quarter < 2:
            return
        print("memory [MB]:", *(size // 1024 for size in sizes_kB))
        early, late = max(sizes_kB[quarter:2 * quarter]), max(sizes_kB[-quarter:])
        self.assertLess(late, 1.1 * early + 8192, sizes_kB)

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
