#pragma once
// A lever that is still to be solved, drawn to scale: what acts on it, where and which way. All
// arrows are of one length, so that none gives a size away.

#include "scene/lever/lever_drawing.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

/// Length of every arrow.
inline constexpr double kOpenArrow_px = 48.0;

/// The angle between the pull and the lever.
struct StatedAngle {
    double size_rad = 0.0;
    std::string text; ///< "60°"
};

/// A spot to choose, with its letter.
struct LetteredSpot {
    std::string letter; ///< "A"
    mechanics::Vec2 at_m = mechanics::Vec2::Zero();
};

/// What an open drawing shows.
struct OpenLever {
    std::string title;
    std::string description; ///< the same in sentences, for a reader who cannot see it
    std::string axis_name = "axis";
    std::optional<setup::Limb> limb; ///< drawn instead of a beam
    bool from_above = false;         ///< the axis upright: weights point into the sheet
    bool show_axis = true;
    bool show_effort = true;
    bool show_effort_place = false; ///< where the effort acts, while it is asked which way
    std::optional<StatedAngle> effort_angle;
    std::vector<LengthMark> lengths;
    double first_shelf_px = 66.0; ///< from the lever to the first length that is marked
    std::vector<LetteredSpot> spots;
};

/// Draws a lever that need not be solvable.
/// @param view  where the lever lies; its size is the drawing's
Drawing draw_open_lever(const mechanics::Lever& lever, const StageView& view, const OpenLever& how);

} // namespace steelyard::scene
