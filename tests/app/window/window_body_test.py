"""The body's stage in the real window: what it shows is what the solver says of the exercise."""

import json
import re
import subprocess
from pathlib import Path

from held_exercise import held
from shown_quantity import agrees, read_shown
from window_case import WindowTest
from window_driver import Frame


def joint_word(hinge):
    """What the screen calls a joint: "right_elbow_flexion" is "elbow"."""
    joint = re.sub(r"^(?:right|left)_", "", hinge).split("_")[0]
    return {"lumbar": "low back", "girdle": "shoulder girdle"}.get(joint, joint)


def mirror(hinge):
    """The same hinge of the other side; None for one of the middle."""
    for side, other in (("right_", "left_"), ("left_", "right_")):
        if hinge.startswith(side):
            return other + hinge[len(side):]
    return None


def shares(truth):
    """For each axis its name on the screen, its torque and whether it stands for both sides."""
    axes = truth["axes"]
    size = {name: abs(joint["effort_torque_Nm"]) for name, joint in truth["joints"].items()}
    found = []
    for axis in axes:
        other, word = mirror(axis), joint_word(axis)
        among_single = other and other not in axes and not all(mirror(one) for one in axes)
        if among_single and size[other] > 0.02 * max(size[other], size[axis]):
            found.append((f"both {word}s", size[axis] + size[other], True))
        else:
            found.append((word, size[axis], False))
    return found


class Body(WindowTest):
    """The body's numbers, by mouse and by keys."""

    def open_exercise(self, name):
        bench = self.open(self.setups / "body" / f"{name}.setup.toml")
        self.assertTrue(bench.frame().says("The load pulls hardest at"))
        return bench

    # --- what the solver says ----------------------------------------------------------------

    def solve(self, setup):
        out = subprocess.run([self.program, "solve", "--json", str(setup)], check=True,
                             capture_output=True).stdout
        return json.loads(out)

    def kept(self, bench):
        """The exercise as it was kept, and where on its path it stands."""
        kept = json.loads(bench.kept_file("body.json").read_text(encoding="utf-8"))
        return kept["setup"], kept["progress"]

    def truth_of(self, bench):
        """The solver's own words about the kept exercise, held where it stands."""
        setup = Path(self.folder.name) / "held.setup.toml"
        setup.write_text(held(*self.kept(bench)), encoding="utf-8")
        return self.solve(setup)

    def check(self, bench, chosen=0):
        """Every number of the column and of the drawing is the solver's, to the digits shown."""
        truth = self.truth_of(bench)
        self.check_against(truth, bench.frame(), chosen)
        return truth

    def check_against(self, truth, frame, chosen=0):
        rows = frame.rows()
        axes, joints = truth["axes"], truth["joints"]
        sizes = [abs(joints[axis]["effort_torque_Nm"]) for axis in axes]
        shown = shares(truth)
        for (name, size, both), one in zip(shown, sizes):
            self.assert_shown(rows, name, size)
            plate = [t for t in frame.texts if re.fullmatch(r"[\d.\s]+(N·m|ft·lbf)", t)
                     and agrees(t, one)]
            self.assertGreaterEqual(len(plate), 1 if both else 2)  # the plate is of one side
        order = sorted(range(len(axes)), key=lambda i: -shown[i][1])
        largest = shown[order[0]][1]  # which of equals is named is rounding
        equals = [one if both else f"the {one}" for one, size, both in shown
                  if size > 0.995 * largest or size == largest]
        self.assertTrue(any(name in frame.texts for name in equals), (equals, frame.texts))
        if len(axes) > 1:
            share = 100.0 * shown[order[1]][1] / shown[order[0]][1]
            words = f"and {share:.0f} % of that" if share >= 0.5 else "and next to nothing at"
            if share > 99.5:
                words = "and the same at"
            self.assertTrue(frame.says(words), (share, frame.texts))
        joint = joints[axes[chosen]]
        self.assert_shown(rows, next(row for row in rows if row.startswith("Torque, ")),
                          sizes[chosen])
        strip = next(text for text in frame.texts if text.startswith("load and limbs at the "))
        self.assertTrue(agrees(re.sub(r"^\D+", "", strip), abs(joint["load_torque_Nm"])), strip)
        self.check_load_arm(joint, rows)
        if joint["muscle_force_N"] and joint["outcome"] == "balanced":
            self.assert_shown(rows, "Muscles pull", sum(joint["muscle_force_N"].values()))
            if joint["reaction_N"] is None:  # the direction of a pull is not on file
                self.assertEqual(rows["Joint reaction"], "not known")
            else:
                self.assert_shown(rows, "Joint reaction", joint["reaction_N"])
            for basis in {muscle["basis"] for muscle in joint["muscles"].values()
                          if muscle["force_N"]}:
                self.assertIn(basis, " ".join(frame.texts))  # what the moment arms rest on
        elif joint["outcome"] == "not_modelled":
            self.assertEqual(rows["Muscles pull"], "not modelled")
            self.assertIn("are not modelled here", " ".join(frame.texts))  # over several lines

    def check_load_arm(self, joint, rows):
        """The arm of what drives the joint: the ground's push where it acts beyond it, else the load
        that turns most."""
        forces = {force["name"]: abs(force["torque_Nm"]) for force in joint["forces"]
                  if force["name"] != "own weight"}
        ground = {name: torque for name, torque in forces.items() if name.startswith("ground")}
        if ground or forces:
            main = max(ground or forces, key=forces.get)
            arm = next(force for force in joint["forces"] if force["name"] == main)
            self.assert_shown(rows, "Moment arm, ground's push" if ground else "Load arm",
                              arm["moment_arm_m"])

    def assert_shown(self, rows, name, value):
        self.assertIn(name, rows)
        self.assertTrue(agrees(rows[name], value), f"{name}: shown {rows[name]}, is {value}")

    # --- tests -------------------------------------------------------------------------------

    def test_what_opens_shows_the_solvers_numbers_in_every_plane(self):
        for name in ("squat-bar-back", "lateral-raise-straight", "trunk-rotation-cable-far",
                     "leg-extension-machine", "crate-near"):
            with self.subTest(name):
                self.begin_as_a_newcomer()  # else the units of the run before may have been kept
                bench = self.open_exercise(name)
                truth = self.solve(self.setups / "body" / f"{name}.setup.toml")
                self.check_against(truth, bench.frame())
                in_us_units = bench.press("u")
                self.assertTrue(any(text.endswith("ft·lbf") for text in in_us_units.texts))
                self.check_against(truth, in_us_units)
                second = bench.press("a")
                self.check_against(truth, second, chosen=1 % len(truth["axes"]))
                bench.kill()

    def test_one_side_of_a_paired_joint_can_be_read_in_place_of_both(self):
        bench = self.open_exercise("hinge-bar-near")
        truth = self.truth_of(bench)["joints"]["right_hip_flexion"]
        both = bench.frame().rows()
        one = bench.click_word("One side").rows()
        self.assert_shown(both, "both hips", 2 * abs(truth["effort_torque_Nm"]))
        self.assert_shown(one, "each hip", abs(truth["effort_torque_Nm"]))
        self.assertEqual(one["low back"], both["low back"])
        self.assertEqual(bench.click_word("Both sides").rows(), both)

    def test_a_hand_dragged_along_its_way_goes_through_the_repetition_only(self):
        bench = self.open_exercise("curl-dumbbell")
        setup, progress = self.kept(bench)
        hard = self.truth_of(bench)
        x, y = bench.frame().grip("dumbbell place")
        lower_x, lower_y = bench.press(*["shift+Left"] * 2).grip("dumbbell place")
        bench.press(*["shift+Right"] * 2)
        bench.drag("dumbbell place", lower_x - x, y - lower_y)
        after, lower = self.kept(bench)
        self.assertEqual(after, setup)
        self.assertAlmostEqual(lower, progress - 0.2, delta=0.03)
        easier = self.check(bench)
        self.assertLess(abs(easier["joints"]["right_elbow_flexion"]["effort_torque_Nm"]),
                        abs(hard["joints"]["right_elbow_flexion"]["effort_torque_Nm"]))

    def test_a_dragged_joint_poses_the_arm_and_undo_restores_it_exactly(self):
        bench = self.open_exercise("curl-dumbbell")
        start, kept = bench.frame(), self.kept(bench)
        posed = bench.drag("right elbow place", 70, 25)
        self.assertNotEqual(self.kept(bench)[0], kept[0])
        self.assertNotEqual(posed.rows(), start.rows())
        self.check(bench)
        bench.drag("dumbbell tip", 0, -40)
        heavier = bench.aside()
        self.assertNotEqual(heavier.rows(), posed.rows())
        self.check(bench)
        self.assertEqual(bench.press("ctrl+z").rows(), posed.rows())
        self.assertEqual(bench.click_word("Undo").rows(), start.rows())
        self.assertEqual(bench.frame().data["grips"], start.data["grips"])
        self.assertEqual(self.kept(bench), kept)
        bench.press("ctrl+y")
        self.assertEqual(bench.click_word("Redo").rows(), heavier.rows())
        self.check(bench)

    def test_a_dragged_pulley_turns_the_pull(self):
        bench = self.open_exercise("curl-cable")
        before = self.check(bench)["joints"]["right_elbow_flexion"]
        bench.drag("pulley of the cable place", 160, 120)
        after = self.check(bench)["joints"]["right_elbow_flexion"]
        self.assertNotEqual(before["forces"], after["forces"])
        self.assertIn('tension = "80 N"', self.kept(bench)[0])

    def test_the_plots_cursor_scrubs_and_its_values_are_the_solvers(self):
        bench = self.open_exercise("curl-dumbbell")
        x, y = bench.frame().grip("scrubber")
        end_x, _ = bench.frame().grip("end of the path")
        bench.drag("scrubber", end_x - x + 5)
        self.assertEqual(self.kept(bench)[1], 1.0)
        self.check(bench)
        bench.drag("scrubber", 0.5 * (x - end_x))
        self.assertLess(self.kept(bench)[1], 1.0)
        truth = self.check(bench)
        # Over the cursor the plot tells the same, straight between 49 places of the curve: within
        # a part in a hundred.
        x, y = bench.frame().grip("scrubber")
        bench.act("mousemove", round(x), round(y) + 20)
        told = next(text for text in bench.frame().texts if text.startswith("at "))
        shown = re.search(r"elbow ([^,…]+)", told)[1]
        self.assertAlmostEqual(read_shown(shown)[0] /
                               abs(truth["joints"]["right_elbow_flexion"]["effort_torque_Nm"]), 1.0,
                               delta=0.01)
        bench.aside()
        for subject in ("load", "muscles", "advantage"):
            self.assertTrue(bench.press("p").says("copy as"), subject)
        self.assertTrue(bench.click_word("PNG").says("Written:"))
        written = next(Path(self.folder.name).rglob("*.png"))
        self.assertEqual(written.read_bytes()[1:4], b"PNG")

    def test_keys_alone_choose_move_size_type_and_take_back(self):
        bench = self.open_exercise("curl-dumbbell")
        start, kept = bench.frame(), self.kept(bench)
        self.assertNotEqual(bench.press("Prior").rows(), start.rows())
        self.check(bench)
        self.assertEqual(bench.press("ctrl+z").rows(), start.rows())
        bench.press("Tab")
        moved = bench.press("shift+Right")
        self.assertNotEqual(moved.rows(), start.rows())
        self.check(bench)
        bench.press("Up")
        self.check(bench)
        self.assertEqual(bench.press("ctrl+z").rows(), start.rows())  # one run of nudges
        self.assertEqual(self.kept(bench), kept)
        bench.press("ctrl+y")
        self.check(bench)
        bench.press("Return")
        bench.act("type", "--delay", 30, "20 lb")
        bench.press("Return")
        self.check(bench)
        typed_kg = re.findall(r'mass = "([\d.]+) kg"', self.kept(bench)[0])[-1]
        self.assertAlmostEqual(float(typed_kg), 20 * 0.45359237)  # the pound of 1959
        bench.press("Escape")
        bench.press("Right")
        self.check(bench)
        self.check_against(self.truth_of(bench), bench.press("a"), chosen=1)
        unfolded = bench.press("r")
        self.assertTrue(any("=" in text for text in unfolded.texts))
        for view in ("2", "3", "Home"):
            self.assertEqual(bench.press(view).rows(), unfolded.rows())

    def test_the_repetition_is_played_to_both_ends_and_stops_where_it_is_stopped(self):
        bench = self.open_exercise("lateral-raise-straight")
        setup, _ = self.kept(bench)
        x, y = bench.frame().grip("scrubber")
        end_x, _ = bench.frame().grip("end of the path")
        start_x, _ = bench.frame().grip("start of the path")
        before = bench.frame_count()
        bench.xdotool("key", "space")
        seen = []

        def at_both_ends():
            bench.follow()
            places = [Frame(json.loads(line)).grip("scrubber")[0]
                      for line in bench.told[before + len(seen):]]
            seen.extend(places)
            near = 0.1 * abs(end_x - start_x)
            return any(abs(place - end_x) < near for place in seen) and \
                any(abs(place - start_x) < near for place in seen)
        bench.wait(at_both_ends, "the repetition to be played")
        self.assertGreater(len(set(seen)), 10)  # it moves, it does not jump
        bench.act("key", "space")
        self.check(bench)
        self.assertEqual(self.kept(bench)[0], setup)
        # Playing is no step to take back, and none leads to the exercise that stood there before.
        bench.press("ctrl+z")
        self.assertEqual(self.kept(bench)[0], setup)

    def test_the_frame_after_an_event_already_shows_its_result(self):
        bench = self.open_exercise("curl-dumbbell")
        for key in ("Left", "Prior", "Home"):
            before, old = bench.frame_count(), bench.frame()
            bench.press(key)
            frames = bench.frames()[before:]
            self.assertEqual(frames[0].rows(), frames[-1].rows(), key)
            self.assertEqual(frames[0].rows() != old.rows(), key != "Home", key)
        bench.drag("right elbow place", 40, 10, release=False)
        x, y = bench.frame().grip("right elbow place")
        before, old = bench.frame_count(), bench.frame()
        bench.act("mousemove", round(x + 30), round(y))
        frames = bench.frames()[before:]
        self.assertNotEqual(frames[0].rows(), old.rows())
        self.assertEqual(frames[0].rows(), frames[-1].rows())
        self.assertEqual(frames[0].data["grips"], frames[-1].data["grips"])
        bench.act("mouseup", 1)
