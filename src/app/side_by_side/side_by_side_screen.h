#pragma once
// Side by side: two exercises at one scale, one scrubber for both, and what to change about B.

#include "app/side_by_side/pair_screen.h"
#include "app/side_by_side/side_by_side_column.h"
#include "app/side_by_side/side_by_side_model.h"
#include "app/side_by_side/side_by_side_stage.h"

namespace steelyard::app {

/// Side by side between frames.
struct SideBySideScreen {
    SideBySideModel model;
    std::vector<mechanics::Muscle> muscles; ///< all that are known
    PairColumn column;
    std::array<scene::BodyStage, 2> stages;
    bool stages_fit = false;
    bool playing = false;
    double played_s = 0.0; ///< into the repetition
    bool holds_plot = false;
    bool reaches_aim = false; ///< the main action waits for the way to it
    std::optional<EasedChange<mechanics::Exercise, mechanics::Change>> eased;
    bool less_motion = false; ///< nothing is animated

    bool moving() const { return playing || eased || model.search.has_news(); }
};

/// A new pair on the stage.
/// @param muscles  all that are known
SideBySideScreen open_side_by_side(const setup::BodySetup& a, const setup::BodySetup& b,
                                   std::vector<mechanics::Muscle> muscles);

/// Runs one frame. Keys: left and right scrub, Space plays, Tab chooses the next joint, up and down
/// select a change, Enter takes it, E makes B equal A, G chooses the next aim, T types one, L sets
/// a limit at the joint, X swaps, C copies A to B, A chooses A from the shelf, F takes the present
/// exercise of the body stage as A.
SideBySideFrame run_side_by_side(const Style& style, const Layout& layout, const FrameInput& input,
                                 setup::UnitSystem units, SideBySideScreen& screen);

} // namespace steelyard::app
