#pragma once
// The torques of an exercise over its range, for figures: as curves, and as a plot beside a
// drawing.

#include "mechanics/error.h"
#include "scene/drawing.h"
#include "scene/plot/sweep_plot.h"
#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <vector>

namespace steelyard::publish {

/// Places of the curves: one for each per cent of the path.
inline constexpr std::size_t kCurvePlaces = 101;

/// The size of the muscles' torque at each axis of the setup, which must have a path; moved so
/// slowly that only weights count. Each curve is marked at its peak.
tl::expected<std::vector<scene::SweepCurve>, mechanics::MechanicsError>
torque_curves(const setup::BodySetup& setup);

/// Angles of the first axis that moves on the path; where none does, parts of the way.
scene::RangeScale range_of(const setup::BodySetup& setup);

/// A sheet shared by a drawing and a plot: beside each other on a wide one, else below each other.
struct PlotSheet {
    scene::Point drawing_px = scene::Point::Zero(); ///< size of the drawing, at the top left
    scene::Rect plot;                               ///< what is left for the plot and its words
};
PlotSheet share_sheet(const scene::Point& sheet_px);

/// Enlarges a drawing to the sheet and puts the curves into the plot's part of it.
/// @param progress  the present place, 0 to 1, which is marked on every curve
void add_plot_beside(const setup::BodySetup& setup, std::vector<scene::SweepCurve> curves,
                     double progress, const scene::Point& sheet_px, scene::Drawing& drawing);

} // namespace steelyard::publish
