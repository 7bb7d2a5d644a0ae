#include "publish/figures/sweep_figure.h"

#include "mechanics/muscle/muscle_sweep.h"
#include "publish/figures/caption.h"
#include "publish/figures/figure_head.h"
#include "publish/figures/torque_curves.h"
#include "scene/body/body_stage.h"
#include "scene/body/pose_row.h"
#include "scene/marks/text_width.h"
#include "scene/plot/sweep_plot.h"
#include "words/body/axis_shares.h"
#include "words/body/body_words.h"
#include "words/caution.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::publish {
namespace {

using mechanics::Hinge;
using mechanics::MechanicsError;
using scene::SweepCurve;

/// More curves than these cannot be told apart by their strokes.
constexpr std::size_t kMostCurves = 5;

/// The curves of a figure.
struct Curves {
    std::vector<SweepCurve> torques; ///< one for each axis of the setup
    std::vector<SweepCurve> pulls;   ///< of the first axis's muscles that pull, the strongest first
    std::string no_pulls;            ///< why they are not said; empty when they are
};

/// The highest place of evenly spaced values, between them by the parabola through the three
/// about it.
scene::CurvePlace peak_of(const std::vector<double>& values) {
    const auto top = std::max_element(values.begin(), values.end());
    const auto at = static_cast<std::size_t>(top - values.begin());
    const auto last = static_cast<double>(values.size() - 1);
    scene::CurvePlace peak{static_cast<double>(at) / last, *top};
    if (at == 0 || at + 1 == values.size())
        return peak;
    const double slope = 0.5 * (values[at + 1] - values[at - 1]);
    const double bend = values[at + 1] - 2.0 * *top + values[at - 1];
    if (bend < 0.0) {
        peak.progress += -slope / bend / last;
        peak.value_SI += -0.5 * slope * slope / bend;
    }
    return peak;
}

/// Adds the pulls, or why somewhere on the way they cannot be said.
tl::expected<void, MechanicsError> add_pulls(const setup::BodySetup& setup,
                                             const std::vector<mechanics::Muscle>& muscles,
                                             Curves& figure) {
    std::vector<SweepCurve>& curves = figure.pulls;
    const mechanics::Exercise& exercise = setup.exercise;
    const auto shown = words::shown_muscles(setup, muscles, setup.axes.front());
    const auto steps = mechanics::sweep_muscles(exercise.body_case, exercise.path, std::nullopt,
                                                setup.axes.front(), shown,
                                                mechanics::usual_sharing(shown), kCurvePlaces);
    if (!steps)
        return tl::make_unexpected(steps.error());
    for (const mechanics::MuscleStep& step : *steps) {
        figure.no_pulls = words::why_no_force(step.solution, setup.axes.front(), setup.head.units);
        if (!figure.no_pulls.empty())
            return {};
    }
    for (std::size_t i = 0; i < shown.size(); ++i) {
        SweepCurve curve{shown[i].name, {}, {}};
        for (const mechanics::MuscleStep& step : *steps)
            curve.values_SI.push_back(step.solution.muscles[i].tension_N);
        curve.marked = peak_of(curve.values_SI);
        if (curve.marked.value_SI > 0.0)
            curves.push_back(std::move(curve));
    }
    std::stable_sort(curves.begin(), curves.end(), [](const SweepCurve& a, const SweepCurve& b) {
        return a.marked.value_SI > b.marked.value_SI;
    });
    curves.resize(std::min(curves.size(), kMostCurves));
    return {};
}

std::string summary_of(const setup::BodySetup& setup, const Curves& curves,
                       const scene::RangeScale& range) {
    const auto peak = [&](const SweepCurve& curve, setup::Dimension dimension) {
        return curve.name + ' ' + scene::marked_text(curve, dimension, setup.head.units, range);
    };
    std::string text;
    for (const SweepCurve& curve : curves.torques)
        text += (text.empty() ? "Largest torques: " : ", ") + peak(curve, setup::Dimension::torque);
    text += '.';
    for (std::size_t i = 0; i < curves.pulls.size(); ++i) {
        text +=
            (i == 0 ? " Largest pulls: " : ", ") + peak(curves.pulls[i], setup::Dimension::force);
    }
    if (!curves.no_pulls.empty())
        return text + ' ' + curves.no_pulls;
    return curves.pulls.empty() ? text : text + '.';
}

/// Room at the right of a plot for the longest name.
double names_px(const Curves& curves) {
    double widest = 0.0;
    for (const auto* group : {&curves.torques, &curves.pulls}) {
        for (const SweepCurve& curve : *group) {
            widest = std::max(
                widest, scene::text_width_px(curve.name, scene::TextSize::caption, false, 1.0));
        }
    }
    constexpr double kLeader_px = 44.0;
    constexpr double kEdge_px = 28.0;
    return kLeader_px + widest + kEdge_px;
}

void add_poses(const setup::BodySetup& setup, const scene::Rect& room,
               std::vector<scene::Shape>& shapes) {
    constexpr int kPoses = 5;
    std::vector<scene::PosePlace> places;
    for (int i = 0; i < kPoses; ++i) {
        const double progress = static_cast<double>(i) / (kPoses - 1);
        places.push_back({progress, room.low.x() + progress * (room.high.x() - room.low.x())});
    }
    const double width_px = 0.9 * (room.high.x() - room.low.x()) / (kPoses - 1);
    scene::Rect floor = room;
    floor.low.x() -= 0.4 * width_px;
    floor.high.x() += 0.4 * width_px;
    scene::add_pose_row(setup.exercise, scene::camera_of(setup.view), places, floor, width_px,
                        shapes);
}

void add_plots(const setup::BodySetup& setup, const Curves& curves, const scene::RangeScale& range,
               const scene::Rect& frame, std::vector<scene::Shape>& shapes) {
    const bool both = !curves.pulls.empty();
    const double height_px = frame.high.y() - frame.low.y();
    scene::SweepPlot plot;
    plot.units = setup.head.units;
    plot.range = range;
    plot.title = "torque of the muscles";
    plot.curves = curves.torques;
    plot.range_words = !both;
    plot.frame = frame;
    if (both)
        plot.frame.high.y() = frame.low.y() + 0.54 * height_px - scene::kPlotTop_px;
    scene::add_sweep_plot(plot, shapes);
    if (!both)
        return;
    plot.title =
        fmt::format("pull of the muscles of the {}", words::joint_word(setup.axes.front()));
    plot.dimension = setup::Dimension::force;
    plot.role = scene::Role::effort;
    plot.curves = curves.pulls;
    plot.range_words = true;
    plot.frame = frame;
    plot.frame.low.y() = frame.low.y() + 0.54 * height_px + 0.5 * scene::kPlotTop_px;
    scene::add_sweep_plot(plot, shapes);
}

} // namespace

tl::expected<scene::Drawing, MechanicsError>
sweep_figure(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
             const scene::Point& sheet_px) {
    if (!setup.exercise.path) {
        return tl::make_unexpected(MechanicsError{mechanics::Fault::inconsistent, "path",
                                                  "a path to sweep: this exercise holds still"});
    }
    auto torques = torque_curves(setup);
    if (!torques)
        return tl::make_unexpected(torques.error());
    Curves curves{std::move(*torques), {}, {}};
    if (const auto added = add_pulls(setup, muscles, curves); !added)
        return tl::make_unexpected(added.error());
    const scene::RangeScale range = range_of(setup);
    const std::string summary = summary_of(setup, curves, range);
    Caption caption(summary, sheet_px.x());
    caption.add_small(words::kCaution);

    scene::Drawing drawing;
    drawing.size_px = sheet_px - scene::Point(0.0, caption.height_px());
    drawing.title = setup.head.name + ", through the range";
    drawing.description = setup.head.description + ' ' + summary;
    const double head_px =
        add_figure_head(setup.head.name, setup.head.description, sheet_px.x(), drawing.shapes);
    const double poses_px = 0.24 * drawing.size_px.y();
    const scene::Point left(24.0 + scene::kPlotLeft_px, head_px);
    const scene::Point right(drawing.size_px.x() - names_px(curves),
                             drawing.size_px.y() - scene::kPlotBottom_px);
    add_poses(setup, {left, {right.x(), head_px + poses_px}}, drawing.shapes);
    add_plots(setup, curves, range, {left + scene::Point(0.0, poses_px + 44.0), right},
              drawing.shapes);
    caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish
