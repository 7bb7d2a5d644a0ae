#include "publish/figures/torque_curves.h"

#include "mechanics/range/sweep.h"
#include "scene/marks/text_width.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"
#include "words/body/body_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::publish {

using mechanics::Hinge;
using mechanics::MechanicsError;
using scene::Point;
using scene::SweepCurve;

namespace {

/// Wider than this times its height, a sheet has the plot beside the drawing.
constexpr double kWide = 1.2;

/// The value of a curve between its places.
double value_at(const SweepCurve& curve, double progress) {
    const double place =
        std::clamp(progress, 0.0, 1.0) * static_cast<double>(curve.values_SI.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, curve.values_SI.size() - 1);
    const double share = place - static_cast<double>(below);
    return (1.0 - share) * curve.values_SI[below] + share * curve.values_SI[above];
}

/// Room at the right of the plot for the longest name and the mark's words [px].
double names_px(const std::vector<SweepCurve>& curves) {
    double widest = 0.0;
    for (const SweepCurve& curve : curves)
        widest = std::max(widest,
                          scene::text_width_px(curve.name, scene::TextSize::caption, false, 1.0));
    constexpr double kLeader_px = 44.0;
    return std::max(kLeader_px + widest, scene::kPlotRight_px);
}

} // namespace

tl::expected<std::vector<SweepCurve>, MechanicsError> torque_curves(const setup::BodySetup& setup) {
    const mechanics::Exercise& exercise = setup.exercise;
    const auto sweep = mechanics::sweep(exercise.body_case, *exercise.path, kCurvePlaces);
    if (!sweep)
        return tl::make_unexpected(sweep.error());
    mechanics::Exercise slow = exercise;
    slow.tempo.reset();
    const auto repetition = mechanics::read_repetition(slow, setup.axes);
    if (!repetition)
        return tl::make_unexpected(repetition.error());
    std::vector<SweepCurve> curves;
    for (std::size_t i = 0; i < setup.axes.size(); ++i) {
        const mechanics::PeakTorque& peak = repetition->peaks[i];
        SweepCurve curve{words::one_side_word(setup.axes, peak.hinge),
                         {},
                         {peak.progress, std::abs(peak.torque_Nm)}};
        for (const mechanics::PerHinge& torques : sweep->muscle_Nm)
            curve.values_SI.push_back(std::abs(torques[mechanics::index_of(peak.hinge)]));
        curves.push_back(std::move(curve));
    }
    return curves;
}

/// Angles of the first axis that moves on the path; where none does, parts of the way.
scene::RangeScale range_of(const setup::BodySetup& setup) {
    const mechanics::Exercise& exercise = setup.exercise;
    constexpr double kMoves_rad = 0.05; // three degrees
    for (const Hinge hinge : setup.axes) {
        const double start = exercise.body_case.pose[hinge];
        const double end = exercise.path->end_angle_rad[mechanics::index_of(hinge)];
        if (std::abs(end - start) > kMoves_rad) {
            const auto degrees = [](double angle_rad) {
                return setup::from_SI(angle_rad, setup::Dimension::angle, "°");
            };
            return {fmt::format("{} {}", words::joint_word(hinge),
                                mechanics::hinge_info(hinge).positive),
                    "°", degrees(start), degrees(end)};
        }
    }
    return {"way of the repetition", "\u00A0%", 0.0, 100.0};
}

PlotSheet share_sheet(const Point& sheet_px) {
    PlotSheet shared;
    if (sheet_px.x() > kWide * sheet_px.y()) {
        shared.drawing_px = {std::round(0.56 * sheet_px.x()), sheet_px.y()};
        shared.plot = {{shared.drawing_px.x(), 0.2 * sheet_px.y()},
                       {sheet_px.x(), 0.86 * sheet_px.y()}};
    } else {
        shared.drawing_px = {sheet_px.x(), std::round(0.62 * sheet_px.y())};
        shared.plot = {{0.0, shared.drawing_px.y()}, sheet_px - Point(0.0, 12.0)};
    }
    return shared;
}

void add_plot_beside(const setup::BodySetup& setup, std::vector<SweepCurve> curves, double progress,
                     const Point& sheet_px, scene::Drawing& drawing) {
    for (SweepCurve& curve : curves)
        curve.marked = {progress, value_at(curve, progress)};
    const PlotSheet shared = share_sheet(sheet_px);
    scene::SweepPlot plot;
    plot.units = setup.head.units;
    plot.range = range_of(setup);
    plot.title = "torque of the muscles";
    plot.frame = {shared.plot.low + Point(scene::kPlotLeft_px, scene::kPlotTop_px),
                  shared.plot.high - Point(names_px(curves), scene::kPlotBottom_px)};
    plot.curves = std::move(curves);
    scene::add_sweep_plot(plot, drawing.shapes);
    drawing.size_px = sheet_px;
}

} // namespace steelyard::publish
