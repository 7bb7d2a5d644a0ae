#pragma once
// What the pointer and the keyboard mean on the bench's stage.

#include "app/bench/bench_model.h"
#include "app/frame/frame_input.h"
#include "scene/stage_view.h"

#include <optional>
#include <vector>

namespace steelyard::app {

/// What the stage remembers between frames: what is held, what is chosen, where it looks.
struct StageState {
    scene::StageView view;
    bool view_fits = false;   ///< false = fit the view before the next frame
    bool view_is_own = false; ///< zoomed or panned by hand: a resize keeps it
    bool all_forces = true;   ///< own weight and reaction are drawn too
    scene::LeverPart chosen;
    std::optional<scene::Grip> held;
    scene::Point held_offset_px = scene::Point::Zero(); ///< from the pointer to the grip
    std::optional<scene::Grip> hovered;
    int gesture = 0;                    ///< counts drags and runs of nudges
    std::optional<LeverNumber> nudged;  ///< number of the run of nudges that goes on
    std::optional<LeverNumber> to_type; ///< asked for: type this number
};

/// All that can be taken hold of on the bench: what is seen. Corners only while the lever stands as
/// set.
std::vector<scene::Grip> bench_grips(const BenchModel& model, const scene::LeverPose& pose,
                                     const StageState& stage);

/// Turns what the pointer did into an intent; zoom, pan and choice go to the state at once.
std::optional<BenchIntent> point_on_stage(const BenchModel& model, const StagePointer& pointer,
                                          const scene::LeverPose& pose, StageState& stage);

/// Turns one key press into an intent, or into a change of what is chosen or seen. Keys: arrows
/// nudge the chosen part (Shift: tenfold, Ctrl: its direction), Tab chooses the next part, Enter
/// types its main number, Insert adds a load, Delete removes the chosen one or a corner, H hands
/// over the effort, U switches units, Home fits the view, + and - zoom, Ctrl+Z and Ctrl+Y undo and
/// redo.
std::optional<BenchIntent> press_on_stage(const BenchModel& model, const KeyPress& key,
                                          StageState& stage);

/// Hands the effort's size to the hand, or back to the solver when it is set or known.
BenchIntent hand_switch(const BenchModel& model);

/// A further load of a modest size, on the side of the axis where the lever is longer.
AddLoad new_load(const BenchModel& model);

/// Step to which a dragged place snaps [m]: a round length that is some pixels wide.
double place_step_m(const scene::StageView& view, setup::UnitSystem units);

/// Step to which a dragged or nudged size snaps [N].
double force_step_N(const scene::StageView& view, setup::UnitSystem units);

} // namespace steelyard::app
