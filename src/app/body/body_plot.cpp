#include "app/body/body_plot.h"

#include "mechanics/constants.h"
#include "publish/exchange/csv.h"
#include "scene/body/body_drawing.h"
#include "scene/plot/axis_ticks.h"
#include "scene/plot/sweep_plot.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Curve;
using scene::Dash;
using setup::Dimension;

constexpr int kValueTicks = 6;
/// A value as small as this is rounding in all that is plotted [SI].
constexpr double kNothing = 1e-9;
constexpr int kRangeTicks = 5;
constexpr Dash kDashes[] = {Dash::solid, Dash::dashed, Dash::dotted};

Dimension plotted_dimension(PlotSubject subject) {
    switch (subject) {
    case PlotSubject::torque:
    case PlotSubject::load:
        return Dimension::torque;
    case PlotSubject::muscles:
        return Dimension::force;
    case PlotSubject::advantage:
        break;
    }
    return Dimension::number;
}

double way_rad(const BodyModel& model, Hinge hinge) {
    return model.exercise().path->end_angle_rad[mechanics::index_of(hinge)] -
           model.exercise().body_case.pose[hinge];
}

double angle_rad(const BodyModel& model, double progress) {
    const Hinge hinge = range_hinge(model);
    return model.exercise().body_case.pose[hinge] + progress * way_rad(model, hinge);
}

double sign_of_peak(const std::vector<double>& values) {
    double peak = 0.0;
    for (const double value : values)
        if (std::isfinite(value) && std::abs(value) > std::abs(peak))
            peak = value;
    return peak < 0.0 ? -1.0 : 1.0;
}

Curve curve_of(std::string name, const std::vector<double>& values, std::size_t index, bool strong,
               scene::Role role = scene::Role::ink) {
    Curve curve{std::move(name), values, kDashes[index % std::size(kDashes)], strong, role};
    return curve;
}

/// The joint's word; of two axes of one joint their movements, for a plot has little room.
std::string curve_name(const std::vector<Hinge>& axes, std::size_t i) {
    return scene::axis_word(axes, axes[i]) == scene::joint_word(axes[i])
               ? words::one_side_word(axes, axes[i])
               : words::movement_word(axes[i]);
}

/// Torques of every axis, each turned so that its peak is above zero.
std::vector<Curve> torque_curves(const BodyModel& model,
                                 const std::vector<std::vector<double>>& rows_Nm) {
    std::vector<Curve> curves;
    for (std::size_t i = 0; i < rows_Nm.size(); ++i) {
        Curve curve =
            curve_of(curve_name(model.state.setup.axes, i), rows_Nm[i], i, i == model.state.chosen);
        const double sign = sign_of_peak(curve.values);
        for (double& value : curve.values)
            value *= sign;
        curves.push_back(std::move(curve));
    }
    return curves;
}

std::vector<Curve> muscle_curves(const BodyModel& model) {
    std::vector<Curve> curves;
    if (model.curves.muscles_N.empty())
        return curves;
    curves.push_back(curve_of("all muscles", model.curves.muscles_N, 0, true, scene::Role::effort));
    for (std::size_t i = 0; i < model.curves.muscle_N.size() && curves.size() < 4; ++i) {
        const auto& row = model.curves.muscle_N[i];
        const bool works = std::any_of(row.begin(), row.end(), [](double value) {
            return std::isfinite(value) && value > 1.0;
        });
        if (works && model.curves.muscle_N.size() > 1)
            curves.push_back(
                curve_of(model.curves.muscles[i], row, i + 1, false, scene::Role::effort));
    }
    curves.push_back(curve_of("joint", model.curves.reaction_N, 2, false, scene::Role::reaction));
    return curves;
}

/// The curves in SI units.
std::vector<Curve> curves_of(const BodyModel& model, PlotSubject subject) {
    switch (subject) {
    case PlotSubject::torque:
        return torque_curves(model, model.curves.torque_Nm);
    case PlotSubject::load:
        return torque_curves(model, model.curves.load_Nm);
    case PlotSubject::muscles:
        return muscle_curves(model);
    case PlotSubject::advantage:
        break;
    }
    if (model.curves.advantage.empty())
        return {};
    return {curve_of("advantage", model.curves.advantage, 0, true)};
}

std::vector<scene::PlotTick> range_ticks(const BodyModel& model) {
    const double from_deg = angle_rad(model, 0.0) / mechanics::kDegree_rad;
    const double to_deg = angle_rad(model, 1.0) / mechanics::kDegree_rad;
    std::vector<scene::PlotTick> ticks;
    if (std::abs(to_deg - from_deg) < 1.0)
        return ticks;
    for (const double tick : scene::round_angle_ticks(std::min(from_deg, to_deg),
                                                      std::max(from_deg, to_deg), kRangeTicks))
        ticks.push_back({(tick - from_deg) / (to_deg - from_deg),
                         setup::format_number(tick, {3, false}) + "°"});
    return ticks;
}

std::string range_words(const BodyModel& model) {
    std::string label(mechanics::hinge_info(range_hinge(model)).label);
    for (const std::string side : {"right ", "left "})
        if (label.rfind(side, 0) == 0)
            label.erase(0, side.size());
    return label;
}

/// Round marks over the values, with room at the top for the peak's words.
void set_value_ticks(scene::CurvePlot& plot) {
    const auto [least, most] = scene::value_range(plot);
    for (const double tick : scene::round_ticks(least, most + 0.12 * (most - least), kValueTicks))
        plot.value_ticks.push_back({tick, setup::format_number(tick, {4, false})});
}

} // namespace

std::string title_of(const BodyModel& model, PlotSubject subject) {
    const std::string joint = scene::axis_word(model.state.setup.axes, model.axis());
    switch (subject) {
    case PlotSubject::torque:
        return "torque that the muscles must give";
    case PlotSubject::load:
        return "torque of the resistance alone";
    case PlotSubject::muscles:
        return "muscles at the " + joint;
    case PlotSubject::advantage:
        return "load ÷ muscles at the " + joint;
    }
    return {};
}

const char* word_of(PlotSubject subject) {
    switch (subject) {
    case PlotSubject::torque:
        return "torque";
    case PlotSubject::load:
        return "load";
    case PlotSubject::muscles:
        return "muscles";
    case PlotSubject::advantage:
        return "advantage";
    }
    return "";
}

Hinge range_hinge(const BodyModel& model) {
    Hinge most = model.axis();
    if (!model.moves() || std::abs(way_rad(model, most)) > mechanics::kDegree_rad)
        return most;
    for (const mechanics::HingeInfo& info : mechanics::all_hinges())
        if (std::abs(way_rad(model, info.hinge)) > std::abs(way_rad(model, most)))
            most = info.hinge;
    return most;
}

scene::CurvePlot make_plot(const BodyModel& model, PlotSubject subject, setup::UnitSystem units,
                           const scene::PlotBand* band, double text_scale) {
    scene::CurvePlot plot;
    plot.text_scale = text_scale;
    plot.title = title_of(model, subject);
    plot.curves = curves_of(model, subject);
    plot.cursor = model.progress;
    const Dimension dimension = plotted_dimension(subject);
    const std::string unit(setup::formula_unit(dimension, units));
    const double per_SI =
        dimension == Dimension::number ? 1.0 : setup::from_SI(1.0, dimension, unit);
    plot.unit = unit;
    for (Curve& curve : plot.curves)
        for (double& value : curve.values)
            value *= per_SI;
    if (band != nullptr && subject == PlotSubject::torque) {
        plot.band = *band;
        const double turned = per_SI * sign_of_peak(model.curves.torque_Nm[model.state.chosen]);
        for (auto* edge : {&plot.band->low, &plot.band->high})
            for (double& value : *edge)
                value *= turned;
    }
    plot.range = range_words(model);
    plot.range_ticks = range_ticks(model);
    set_value_ticks(plot);
    for (const Curve& curve : plot.curves)
        if (const auto place = curve.strong ? scene::peak_place(curve) : std::nullopt) {
            const double value_SI = scene::value_at(curve.values, *place) / per_SI;
            if (std::abs(value_SI) < kNothing)
                break; // nothing has no peak
            plot.peak = fmt::format("{} at {}", setup::format_quantity(value_SI, dimension, units),
                                    setup::format_quantity(angle_rad(model, *place),
                                                           Dimension::angle, units, {3, false}));
        }
    return plot;
}

std::string values_at(const BodyModel& model, PlotSubject subject, setup::UnitSystem units,
                      double progress) {
    std::string line = "at " + setup::format_quantity(angle_rad(model, progress), Dimension::angle,
                                                      units, {3, false});
    const char* between = ": ";
    for (const Curve& curve : curves_of(model, subject)) {
        const double value = scene::value_at(curve.values, progress);
        if (!std::isfinite(value))
            continue;
        line += between + curve.name + " " +
                setup::format_quantity(value, plotted_dimension(subject), units);
        between = ", ";
    }
    return line;
}

std::string curves_csv(const BodyModel& model) {
    const BodyCurves& curves = model.curves;
    const std::string range(mechanics::hinge_info(range_hinge(model)).name);
    std::string text = "progress," + range + "_deg";
    for (const Hinge axis : model.state.setup.axes) {
        const std::string name(mechanics::hinge_info(axis).name);
        text += fmt::format(",{0}_torque_Nm,{0}_resistance_torque_Nm", name);
    }
    const bool known = !curves.muscles_N.empty();
    for (const std::string& muscle : curves.muscles)
        text += "," + publish::csv_text(muscle + " [N]");
    if (known)
        text += ",muscles_N,joint_reaction_N,load_over_muscles";
    for (std::size_t place = 0; place < curves.progress.size(); ++place) {
        text +=
            "\r\n" + publish::csv_number(curves.progress[place]) + "," +
            publish::csv_number(angle_rad(model, curves.progress[place]) / mechanics::kDegree_rad);
        for (std::size_t axis = 0; axis < model.state.setup.axes.size(); ++axis)
            text += "," + publish::csv_number(curves.torque_Nm[axis][place]) + "," +
                    publish::csv_number(curves.load_Nm[axis][place]);
        for (const auto& row : curves.muscle_N)
            text += "," + publish::csv_number(row[place]);
        if (known)
            for (const auto* row : {&curves.muscles_N, &curves.reaction_N, &curves.advantage})
                text += "," + publish::csv_number((*row)[place]);
    }
    return text + "\r\n";
}

} // namespace steelyard::app
