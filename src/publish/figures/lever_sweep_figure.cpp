#include "publish/figures/lever_sweep_figure.h"

#include "mechanics/whatif/lever_sweep.h"
#include "publish/figures/caption.h"
#include "publish/figures/figure_head.h"
#include "scene/lever/lever_drawing.h"
#include "scene/plot/sweep_plot.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::publish {
namespace {

using mechanics::ChangeUnit;
using mechanics::LeverKnob;
using mechanics::LeverSweep;
using mechanics::LeverSweepStep;
using mechanics::MechanicsError;
using scene::Point;
using scene::SweepCurve;
using setup::Dimension;

constexpr std::size_t kSteps = 201;

Dimension dimension_of(ChangeUnit unit) {
    switch (unit) {
    case ChangeUnit::radian:
        return Dimension::angle;
    case ChangeUnit::kilogram:
        return Dimension::mass;
    case ChangeUnit::newton:
        return Dimension::force;
    case ChangeUnit::metre:
    case ChangeUnit::second: // no lever has a tempo
        break;
    }
    return Dimension::length;
}

/// What the places along the curves are called. An effort's direction is told as its turn from the
/// one that is drawn.
scene::RangeScale scale_of(const setup::LeverSetup& setup, const mechanics::LeverChange& change,
                           const LeverSweep& sweep) {
    const Dimension dimension = dimension_of(sweep.unit);
    const std::string unit(setup::formula_unit(dimension, setup.head.units));
    const bool turn = change.knob == LeverKnob::effort_direction;
    const double zero = turn ? sweep.present.value : 0.0;
    const auto shown = [&](double value) { return setup::from_SI(value - zero, dimension, unit); };
    scene::RangeScale scale;
    scale.title = turn ? "turn of the effort, counter-clockwise from where it is drawn"
                       : mechanics::describe(change, setup.lever);
    if (sweep.unit == ChangeUnit::metre)
        scale.title += ", from the first end";
    scale.unit = turn ? unit : "\u00A0" + unit;
    scale.start = shown(sweep.steps.front().value);
    scale.end = shown(sweep.steps.back().value);
    scale.finest = sweep.unit == ChangeUnit::metre ? 0.001 : turn ? 1.0 : 0.1;
    return scale;
}

double progress_of(const LeverSweep& sweep, double value) {
    const double low = sweep.steps.front().value;
    return (value - low) / (sweep.steps.back().value - low);
}

SweepCurve effort_curve(const LeverSweep& sweep) {
    SweepCurve curve{"effort", {}, {}};
    for (const LeverSweepStep& step : sweep.steps)
        curve.values_SI.push_back(step.effort_N);
    curve.marked = {progress_of(sweep, sweep.present.value), sweep.present.effort_N};
    return curve;
}

/// A curve of the optional numbers of the steps; empty where a step has none.
std::vector<SweepCurve> curve_of(const LeverSweep& sweep, const char* name,
                                 std::optional<double> LeverSweepStep::*number) {
    SweepCurve curve{name, {}, {}};
    for (const LeverSweepStep& step : sweep.steps) {
        if (!(step.*number))
            return {};
        curve.values_SI.push_back(*(step.*number));
    }
    curve.marked = {progress_of(sweep, sweep.present.value), (sweep.present.*number).value_or(0.0)};
    return {std::move(curve)};
}

/// The ideal advantage, and the actual one where own weight or friction makes it another.
std::vector<SweepCurve> advantage_curves(const LeverSweep& sweep) {
    std::vector<SweepCurve> curves = curve_of(sweep, "ideal", &LeverSweepStep::ideal_advantage);
    const std::vector<SweepCurve> actual =
        curve_of(sweep, "actual", &LeverSweepStep::actual_advantage);
    constexpr double kSame = 1.0e-6; // of the larger: nothing that could be drawn
    const auto alike = [](double one, double other) {
        return std::abs(one - other) <= kSame * std::max(one, other);
    };
    const bool same = !curves.empty() && !actual.empty() &&
                      std::equal(curves.front().values_SI.begin(), curves.front().values_SI.end(),
                                 actual.front().values_SI.begin(), alike);
    if (same)
        curves.front().name = "advantage";
    else
        curves.insert(curves.end(), actual.begin(), actual.end());
    return curves;
}

std::string summary_of(const LeverSweep& sweep, const std::vector<SweepCurve>& advantages,
                       const scene::RangeScale& scale, setup::UnitSystem units) {
    const auto at = [&](const LeverSweepStep& step) {
        return fmt::format("{} at {}",
                           setup::format_quantity(step.effort_N, Dimension::force, units),
                           scale.text(progress_of(sweep, step.value)));
    };
    const auto [least, most] = std::minmax_element(
        sweep.steps.begin(), sweep.steps.end(),
        [](const LeverSweepStep& a, const LeverSweepStep& b) { return a.effort_N < b.effort_N; });
    std::string text = fmt::format("As it is, the effort is {}", at(sweep.present));
    for (const SweepCurve& curve : advantages) {
        text +=
            fmt::format(", the {}{} {}", curve.name, curve.name == "advantage" ? "" : " advantage",
                        setup::format_number(curve.marked.value_SI));
    }
    text += fmt::format(". Over the range the least effort is {}, the largest {}.", at(*least),
                        at(*most));
    if (sweep.cut_low || sweep.cut_high) {
        text += fmt::format(" The curves end where effort or advantage would be more than {} times "
                            "what it is: further on one of the two moment arms goes to nothing.",
                            mechanics::kMostTimesPresent);
    }
    return text;
}

void add_lever(const setup::LeverSetup& setup, const mechanics::LeverResult& solved, double top_px,
               const Point& size_px, scene::Drawing& drawing) {
    scene::LeverDrawing how;
    how.limb = setup.limb;
    how.units = setup.head.units;
    how.marks.heading = how.marks.strip = how.marks.arrow_scale = false;
    how.heading_top_px = 0.0;
    how.heading_room_px = 0.0;
    const scene::StageMargins margins{std::min(120.0, 0.16 * size_px.x()), 0.2 * size_px.y(),
                                      0.3 * size_px.y()};
    scene::Drawing lever = scene::moved(
        scene::draw_lever(setup.lever, solved,
                          scene::fit_lever(setup.lever, solved, size_px, margins), how),
        {0.0, top_px});
    drawing.shapes.insert(drawing.shapes.end(), lever.shapes.begin(), lever.shapes.end());
}

/// Effort on the left, advantage on the right, over the same range.
void add_plots(const LeverSweep& sweep, const std::vector<SweepCurve>& advantages,
               const scene::RangeScale& scale, setup::UnitSystem units, double top_px,
               scene::Drawing& drawing) {
    scene::SweepPlot plot;
    plot.units = units;
    plot.range = scale;
    const double half_px = 0.5 * drawing.size_px.x();
    const double bottom_px = drawing.size_px.y() - scene::kPlotBottom_px;
    plot.title = "effort";
    plot.dimension = Dimension::force;
    plot.role = scene::Role::effort;
    plot.curves = {effort_curve(sweep)};
    plot.frame = {{scene::kPlotLeft_px + 16.0, top_px + scene::kPlotTop_px},
                  {half_px - scene::kPlotRight_px, bottom_px}};
    scene::add_sweep_plot(plot, drawing.shapes);
    plot.title = "mechanical advantage";
    plot.dimension = Dimension::number;
    plot.role = scene::Role::ink;
    plot.curves = advantages;
    plot.frame.low.x() += half_px;
    plot.frame.high.x() += half_px;
    scene::add_sweep_plot(plot, drawing.shapes);
}

} // namespace

tl::expected<scene::Drawing, MechanicsError> sweep_figure(const setup::LeverSetup& setup,
                                                          const mechanics::LeverChange& change,
                                                          const Point& sheet_px) {
    const auto solved = mechanics::solve_lever(setup.lever);
    if (!solved)
        return tl::make_unexpected(solved.error());
    const auto sweep = mechanics::sweep_lever(setup.lever, change, kSteps);
    if (!sweep)
        return tl::make_unexpected(sweep.error());
    const setup::UnitSystem units = setup.head.units;
    const scene::RangeScale scale = scale_of(setup, change, *sweep);
    const std::vector<SweepCurve> advantages = advantage_curves(*sweep);
    const std::string summary = summary_of(*sweep, advantages, scale, units);
    const Caption caption(summary, sheet_px.x());
    scene::Drawing drawing;
    drawing.size_px = sheet_px - Point(0.0, caption.height_px());
    drawing.title = setup.head.name + ", effort over " + scale.title;
    drawing.description = setup.head.description + ' ' + summary;
    const double head_px =
        add_figure_head(setup.head.name, setup.head.description, sheet_px.x(), drawing.shapes);
    const double lever_px = 0.5 * (drawing.size_px.y() - head_px);
    add_lever(setup, *solved, head_px, {sheet_px.x(), lever_px}, drawing);
    add_plots(*sweep, advantages, scale, units, head_px + lever_px, drawing);
    caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish
