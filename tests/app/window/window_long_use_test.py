"""An evening in the real window, by a script that its seed decides."""

import random
import time

from window_case import WindowTest
from window_hands import Hands, size_kB


class LongUse(WindowTest):
    """The same errands again and again: making, keeping, practising, teaching, reading."""

    MINUTES = 1.0  # window_test.py --minutes

    def test_memory_stays_as_it_is(self):
        bench = self.open_seesaw()
        hands = Hands(bench, random.Random(self.seed))
        begun = time.monotonic()
        samples = []  # (minutes, kB)
        errands = 0
        while (minutes := (time.monotonic() - begun) / 60.0) < self.MINUTES:
            hands.errand()
            errands += 1
            if not samples or minutes - samples[-1][0] >= self.MINUTES / 60.0:
                samples.append((minutes, size_kB(bench)))
                self.check_texts(bench.forget())
        print(f"{errands} errands, {hands.done} events in {self.MINUTES:g} minutes, seed {self.seed}")
        print("memory [MB]:", *(f"{size / 1024.0:.1f}" for _, size in samples))
        self.check_growth(samples)
        bench.xdotool("key", "Escape", "Escape")
        self.assertEqual(bench.ask_to_close(), 0, bench.said())

    def check_growth(self, samples):
        """From the second third to the last nothing grows by more than a twentieth and 4 MB, which
        fonts of another size and a picture's pixels take."""
        third = len(samples) // 3
        if self.MINUTES < 10.0:
            return
        sizes_kB = [size for _, size in samples]
        early, late = max(sizes_kB[third:2 * third]), max(sizes_kB[-third:])
        self.assertLess(late, 1.05 * early + 4096, sizes_kB)
