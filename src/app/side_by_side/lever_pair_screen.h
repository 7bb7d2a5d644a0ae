#pragma once
// Two levers side by side: A above B at one scale, and what to change about B.

#include "app/side_by_side/lever_pair_column.h"
#include "app/side_by_side/pair_screen.h"
#include "scene/stage_view.h"

#include <array>

namespace steelyard::app {

/// Two levers between frames.
struct LeverPairScreen {
    LeverPairModel model;
    ChangeDial dial;
    std::array<scene::StageView, 2> views;
    bool views_fit = false;
    std::optional<EasedChange<mechanics::Lever, mechanics::LeverChange>> eased;
    bool less_motion = false; ///< nothing is animated

    bool moving() const { return eased.has_value(); }
};

/// Runs one frame. Keys: up and down select a change, Enter takes it, E makes B's effort equal A's,
/// + and - turn the selected number, X swaps, C copies A to B, A chooses A from the shelf, F takes
/// the lever of the bench as A, V compares exercises instead.
SideBySideFrame run_lever_pair(const Style& style, const Layout& layout, const FrameInput& input,
                               setup::UnitSystem units, LeverPairScreen& screen);

} // namespace steelyard::app
