"""Random events on the real window."""

import json
import random
import re
import subprocess

from window_case import WindowTest
from window_hands import Hands, size_kB


class HardUse(WindowTest):
    """Hands that do not know what they do."""

    EVENTS = 2000  # window_test.py --events
    BATCH = 500

    def test_random_events_leave_it_running(self):
        bench = self.open_seesaw()
        hands = Hands(bench, random.Random(self.seed))
        sizes_kB = []
        while hands.done < self.EVENTS:
            if len(sizes_kB) <= hands.done // 2000:
                sizes_kB.append(size_kB(bench))
                print(f"{hands.done} events", flush=True)
            hands.flail(self.BATCH)
            for _ in range(5):
                hands.any_word()
            hands.errand()
            self.assertIsNone(bench.process.poll(), f"ended after {hands.done} events:\n{bench.said()}")
            self.check_texts(bench.forget())
        print(f"{hands.done} events with seed {self.seed}")
        for seen in ("Carried by", "add a corner", "Save as one of yours"):
            self.assertTrue(seen in hands.seen or self.EVENTS < 5000, seen)
        self.check_sizes(sizes_kB)
        self.check_end(bench)

    def check_end(self, bench):
        bench.xdotool("mouseup", 1, "mouseup", 3, "key", "Escape", "Escape")
        status = bench.ask_to_close()
        said = bench.said()
        self.assertNotRegex(said, "ERROR: AddressSanitizer|runtime error")
        # The graphics driver is unloaded by then: its leaks, and only its, are of unknown modules.
        ours = [leak for leak in said.split("\n\n")
                if " leak of " in leak and re.search(r"#[1-9]\d* .*/steelyard\b", leak)]
        self.assertEqual(ours, [])
        self.assertTrue(status == 0 or "LeakSanitizer" in said, said)
        for place in ("bench", "body"):
            kept = json.loads((bench.folder / "steelyard" / f"{place}.json")
                              .read_text(encoding="utf-8"))
            setup = bench.folder / f"kept-{place}.setup.toml"
            setup.write_text(kept["setup"], encoding="utf-8")
            done = subprocess.run([self.program, "solve", str(setup)], check=False, text=True,
                                  capture_output=True)
            # An exercise can be posed by hand as nobody could stand: that is said, not solved.
            self.assertTrue(done.returncode == 0 or (place == "body" and done.returncode == 2),
                            done.stderr)

    def check_sizes(self, sizes_kB):
        """Once every place has been seen, memory stays as it is: a long run (20,000 events and more)
        has no more in its last quarter than in its second, but for a tenth."""
        quarter = len(sizes_kB) // 4
        if quarter < 2:
            return
        print("memory [MB]:", *(size // 1024 for size in sizes_kB))
        early, late = max(sizes_kB[quarter:2 * quarter]), max(sizes_kB[-quarter:])
        self.assertLess(late, 1.1 * early + 8192, sizes_kB)
