"""Nothing is drawn while nothing happens."""

import time

from window_case import WindowTest


class Idle(WindowTest):
    """In every place and on every page the window rests until somebody does something."""

    WATCHED_S = 0.8

    def check_rests(self, bench, where):
        bench.kept_file("preferences.json")  # what was done is kept
        bench.wait(lambda: not bench.frame().says("Looking"), "what is looked for beside the frames")
        bench.rest()
        frames = bench.frame_count()
        time.sleep(self.WATCHED_S)
        self.assertEqual(bench.frame_count(), frames, where)

    def test_no_place_draws_while_nothing_happens(self):
        bench = self.open()
        for number in range(2, 9):
            bench.press(f"F{number}")
            self.check_rests(bench, f"in the place of F{number}")

    def test_neither_shelf_nor_page_nor_builder_draws(self):
        bench = self.open()
        for where, keys in (("help", ("F3", "F1")), ("glossary", ("ctrl+g",)),
                            ("page to keep on", ("ctrl+s",)), ("levers", ("o",)),
                            ("letters", ("F9",)), ("exercises", ("F4", "o")),
                            ("builder", ("m",)), ("two levers", ("F5", "v"))):
            bench.press(*keys)
            self.check_rests(bench, where)
            if where not in ("builder", "two levers"):
                bench.press("Escape")
