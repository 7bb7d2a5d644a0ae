#pragma once
// Side by side: two exercises at one scale, one scrubber for both, and what to change about B.

#include "app/frame/frame_input.h"
#include "app/side_by_side/side_by_side_column.h"
#include "app/side_by_side/side_by_side_model.h"
#include "app/side_by_side/side_by_side_stage.h"

namespace steelyard::app {

/// A change of B is eased over this time [s].
inline constexpr double kEase_s = 0.15;

/// B on its way to a new setting.
struct EasedChange {
    mechanics::Exercise before;
    mechanics::Change change;
    double from = 0.0;
    double to = 0.0;
    double elapsed_s = 0.0;
};

/// Side by side between frames.
struct SideBySideScreen {
    SideBySideModel model;
    PairColumn column;
    std::array<scene::BodyStage, 2> stages;
    bool stages_fit = false;
    bool playing = false;
    double played_s = 0.0; ///< into the repetition
    bool holds_plot = false;
    bool reaches_aim = false; ///< the main action waits for the way to it
    int gesture = 1;          ///< counts runs of a dial
    std::optional<EasedChange> eased;
    bool less_motion = false; ///< nothing is animated

    bool moving() const { return playing || eased || model.search.has_news(); }
};

/// A new pair on the stage.
SideBySideScreen open_side_by_side(const setup::BodySetup& a, const setup::BodySetup& b);

/// What a frame asks of the application.
enum class SideBySideWish {
    none,
    choose_a, ///< from the shelf
    choose_b,
    take_stage, ///< what stands on the body stage or the bench becomes A
    other_kind, ///< levers instead of exercises, or exercises instead of levers
};
struct SideBySideOutcome {
    scene::Drawing drawing;
    SideBySideWish wish = SideBySideWish::none;
    bool changed = false; ///< there is something new to keep
};

/// Runs one frame. Keys: left and right scrub, Space plays, Tab chooses the next joint, up and down
/// select a change, Enter takes it, E makes B equal A, G chooses the next aim, T types one, L sets
/// a limit at the joint, X swaps, C copies A to B, A chooses A from the shelf, F takes the present
/// exercise of the body stage as A.
SideBySideOutcome run_side_by_side(const Style& style, const Layout& layout,
                                   const FrameInput& input, setup::UnitSystem units,
                                   SideBySideScreen& screen);

} // namespace steelyard::app
