#include "words/lever/lever_steps.h"

#include "mechanics/lever/lever_geometry.h"
#include "setup/lever/direction.h"
#include "words/lever/lever_explainer.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

/// Part of a force that is rounding, not force.
constexpr double kRounding = 1e-12;

using mechanics::ForceReading;
using mechanics::Lever;
using mechanics::LeverResult;
using mechanics::Vec2;

Steps load_torque_steps(const Explainer& explain) {
    Steps steps;
    for (std::size_t i = 0; i < explain.lever.loads.size(); ++i)
        add_load(explain, i, steps);
    add_own_weight(explain, steps);
    add_torque_sum(explain, steps);
    return steps;
}

Steps effort_arm_steps(const Explainer& explain) {
    if (mechanics::rests_on_two(explain.lever))
        return {span_step(explain)};
    Steps steps;
    add_arm(explain, explain.lever.effort.name, "ₑ", explain.result.effort.point_m,
            mechanics::unit_vector(explain.lever.effort.direction_rad), explain.result.effort_arm_m,
            steps);
    return steps;
}

double friction_radius_m(const Lever& lever) {
    return lever.friction.coefficient * lever.friction.radius_m;
}

/// Torque of 1 N of effort, with its sign [m].
double signed_arm_m(const Explainer& explain) {
    return mechanics::cross(explain.result.effort.point_m - explain.result.axis_m,
                            mechanics::unit_vector(explain.lever.effort.direction_rad));
}

Steps effort_steps(const Explainer& explain) {
    if (mechanics::rests_on_two(explain.lever))
        return second_support_steps(explain);
    if (mechanics::sought_load(explain.lever))
        return {explain.step(fmt::format("{}: its size is known", explain.lever.effort.name), "Fₑ",
                             "", explain.result.effort_N.value_or(0.0), setup::Dimension::force)};
    Steps steps;
    add_torque_sum(explain, steps);
    for (const ComputedStep& arm : effort_arm_steps(explain))
        steps.push_back(arm);
    const LeverResult& result = explain.result;
    if (result.status == mechanics::LeverStatus::effort_through_axis) {
        steps.push_back(
            in_words("No moment arm, no torque", "No effort along this line balances."));
        return steps;
    }
    if (!result.effort_N) {
        steps.push_back(in_words("The axle's friction grows faster than the effort's torque",
                                 "No effort along this line moves the load."));
        return steps;
    }
    const double signed_m = signed_arm_m(explain);
    const double frictionless_N = -result.torque_load_Nm / signed_m;
    const bool reversed = frictionless_N < 0.0;
    steps.push_back(explain.step(
        reversed ? "Balance: the effort would turn the same way as the load, so it comes out "
                   "negative and must pull the other way"
                 : "Balance: the effort's torque is equal to the load's and turns the other way",
        reversed ? "Fₑ = −|τₗ| ÷ dₑ" : "Fₑ = |τₗ| ÷ dₑ",
        fmt::format("{}{} ÷ {}", reversed ? "−" : "",
                    explain.torque(std::abs(result.torque_load_Nm)),
                    explain.length(result.effort_arm_m)),
        frictionless_N + 0.0, setup::Dimension::force));
    const double radius_m = friction_radius_m(explain.lever);
    if (radius_m > 0.0)
        steps.push_back(explain.step(
            "The axle resists with μ × axle radius × reaction; the effort that just moves the load "
            "overcomes both",
            *result.effort_N < 0.0 ? "Fₑ = −(|τₗ| + μ r R) ÷ dₑ" : "Fₑ = (|τₗ| + μ r R) ÷ dₑ",
            fmt::format("{}({} + {} × {} × {}) ÷ {}", *result.effort_N < 0.0 ? "−" : "",
                        explain.torque(std::abs(result.torque_load_Nm)),
                        setup::format_number(explain.lever.friction.coefficient, kInFormulas),
                        explain.length(explain.lever.friction.radius_m),
                        explain.force(result.axis_reaction_N.norm()),
                        explain.length(result.effort_arm_m)),
            *result.effort_N, setup::Dimension::force));
    return steps;
}

/// Sum of the loads' forces, own weight left out.
Vec2 load_force_N(const LeverResult& result) {
    Vec2 sum = Vec2::Zero();
    for (const ForceReading& load : result.loads)
        sum += load.force_N;
    return sum;
}

void add_resultant(const Explainer& explain, Steps& steps) {
    const Vec2 sum = load_force_N(explain.result);
    std::vector<double> sizes;
    bool all_down = true;
    for (const ForceReading& load : explain.result.loads) {
        if (load.force_N.norm() > 0.0)
            sizes.push_back(load.force_N.norm());
        all_down = all_down && load.force_N.x() == 0.0 && load.force_N.y() <= 0.0;
    }
    if (all_down || sizes.size() == 1)
        steps.push_back(explain.step("The load: all loads together, without the lever's own weight",
                                     "Fₗ = ΣF",
                                     sum_of(sizes, setup::Dimension::force, explain.units),
                                     sum.norm(), setup::Dimension::force));
    else
        steps.push_back(explain.step(
            "The load: all loads together as one force, without the lever's own weight",
            "Fₗ = √((ΣFx)² + (ΣFy)²)",
            fmt::format("√(({})² + ({})²)", explain.force(sum.x()), explain.force(sum.y())),
            sum.norm(), setup::Dimension::force));
}

Steps load_arm_steps(const Explainer& explain) {
    Steps steps;
    for (std::size_t i = 0; i < explain.lever.loads.size(); ++i)
        add_load(explain, i, steps);
    if (!explain.result.load_arm_m) {
        steps.push_back(in_words("The loads make no single force",
                                 "No load arm: there is only a torque, or nothing."));
        return steps;
    }
    add_resultant(explain, steps);
    std::vector<double> torques_Nm;
    double torque_Nm = 0.0;
    for (const ForceReading& load : explain.result.loads) {
        torques_Nm.push_back(load.torque_Nm);
        torque_Nm += load.torque_Nm;
    }
    steps.push_back(explain.step("The loads' torques together, without the lever's own weight",
                                 "τ = Στ",
                                 sum_of(torques_Nm, setup::Dimension::torque, explain.units),
                                 torque_Nm, setup::Dimension::torque));
    steps.push_back(explain.step("Load arm: the distance at which that one force makes that torque",
                                 "dₗ = |τ| ÷ Fₗ",
                                 fmt::format("{} ÷ {}", explain.torque(std::abs(torque_Nm)),
                                             explain.force(load_force_N(explain.result).norm())),
                                 *explain.result.load_arm_m, setup::Dimension::length));
    return steps;
}

Steps ideal_advantage_steps(const Explainer& explain) {
    const LeverResult& result = explain.result;
    if (!result.ideal_advantage)
        return {in_words("Ideal advantage is effort arm ÷ load arm",
                         "There is no load arm to divide by.")};
    return {explain.step("Effort arm", "dₑ", "", result.effort_arm_m, setup::Dimension::length),
            explain.step("Load arm", "dₗ", "", *result.load_arm_m, setup::Dimension::length),
            explain.step("Ideal advantage: how much longer the effort arm is", "dₑ ÷ dₗ",
                         fmt::format("{} ÷ {}", explain.length(result.effort_arm_m),
                                     explain.length(*result.load_arm_m)),
                         *result.ideal_advantage, setup::Dimension::number)};
}

Steps actual_advantage_steps(const Explainer& explain) {
    const LeverResult& result = explain.result;
    if (!result.actual_advantage)
        return {in_words("Actual advantage is load ÷ effort",
                         "There is no effort or no load to compare.")};
    Steps steps;
    add_resultant(explain, steps);
    const double load_N = load_force_N(result).norm();
    const double effort_N = std::abs(*result.effort_N);
    steps.push_back(explain.step("Effort, with the lever's own weight and axle friction", "Fₑ", "",
                                 effort_N, setup::Dimension::force));
    steps.push_back(
        explain.step("Actual advantage: how much larger the load is than the effort", "Fₗ ÷ Fₑ",
                     fmt::format("{} ÷ {}", explain.force(load_N), explain.force(effort_N)),
                     *result.actual_advantage, setup::Dimension::number));
    return steps;
}

Steps reaction_steps(const Explainer& explain) {
    const LeverResult& result = explain.result;
    Steps steps;
    const auto add_component = [&](Eigen::Index axis, const char* symbol, const char* title) {
        std::vector<double> forces_N;
        const auto add = [&](const Vec2& force_N) {
            // A level part of a vertical force is rounding.
            if (std::abs(force_N[axis]) > kRounding * force_N.norm())
                forces_N.push_back(force_N[axis]);
        };
        for (const ForceReading& load : result.loads)
            add(load.force_N);
        add(result.own_weight.force_N);
        add(result.effort.force_N);
        if (forces_N.empty())
            forces_N.push_back(0.0);
        steps.push_back(explain.step(
            title, fmt::format("R{0} = −ΣF{0}", symbol),
            fmt::format("−({})", sum_of(forces_N, setup::Dimension::force, explain.units)),
            result.axis_reaction_N[axis] + 0.0, setup::Dimension::force));
    };
    const bool beam = mechanics::rests_on_two(explain.lever);
    add_component(0, "x",
                  beam ? "Sideways balance: loads, own weight and supports add to zero"
                       : "Sideways balance: loads, own weight, effort and reaction add to zero");
    add_component(1, "y", "Upward balance: the same up and down");
    const Vec2& reaction = result.axis_reaction_N;
    const double size_N = reaction.norm();
    steps.push_back(explain.step(
        size_N > 0.0
            ? fmt::format("{} pushes the {} {}",
                          beam ? mechanics::axis_name(explain.lever)
                               : std::string("Axis reaction: the support"),
                          beam ? "beam" : "lever",
                          setup::direction_in_words(std::atan2(reaction.y(), reaction.x())))
            : fmt::format("{} has nothing to bear", beam ? mechanics::axis_name(explain.lever)
                                                         : "Axis reaction: the support"),
        "R = √(Rx² + Ry²)",
        fmt::format("√(({})² + ({})²)", explain.force(reaction.x()), explain.force(reaction.y())),
        size_N, setup::Dimension::force));
    return steps;
}

Steps class_steps(const Explainer& explain) {
    struct Place {
        double at_m;
        std::string name;
    };
    const bool beam = mechanics::rests_on_two(explain.lever);
    std::vector<Place> places = {
        {explain.lever.axis_at_m, mechanics::axis_name(explain.lever)},
        {explain.lever.effort.at_m, explain.lever.effort.name + (beam ? "" : " (effort)")}};
    for (const mechanics::Load& load : explain.lever.loads)
        if (const auto* weight = std::get_if<mechanics::Weight>(&load.action))
            places.push_back({weight->at_m, load.name + " (load)"});
        else if (const auto* force = std::get_if<mechanics::PointForce>(&load.action))
            places.push_back({force->at_m, load.name + " (load)"});
    std::stable_sort(places.begin(), places.end(),
                     [](const Place& one, const Place& other) { return one.at_m < other.at_m; });
    Steps steps;
    std::string order;
    for (const Place& place : places) {
        steps.push_back(explain.step(fmt::format("Place of {} along the lever", place.name), "", "",
                                     place.at_m, setup::Dimension::length));
        order += (order.empty() ? "" : " – ") + place.name;
    }
    steps.push_back(
        {fmt::format("Order: {}. {}", order, class_sentence(explain.lever, explain.result)), "", "",
         class_name(explain.result),
         explain.result.lever_class ? static_cast<double>(*explain.result.lever_class) : 0.0,
         setup::Dimension::number});
    return steps;
}

Steps travel_steps(const Explainer& explain) {
    const LeverResult& result = explain.result;
    if (!result.effort_N || !result.ideal_advantage)
        return {in_words("Distances compare as the arms do",
                         "Effort or load has no moment arm here, so there is no trade to show.")};
    // A small turn: the same for both, so it drops out of the ratio.
    const double turn_rad = mechanics::kPi / 180.0;
    const double effort_N = std::abs(*result.effort_N);
    const double travel_m = result.effort_arm_m * turn_rad;
    const double torque_out_Nm =
        std::abs(result.torque_load_Nm) + std::abs(result.torque_friction_Nm);
    Steps steps;
    steps.push_back(
        explain.step("Turn the lever by 1°: the effort moves along its line by", "sₑ = dₑ × φ",
                     fmt::format("{} × {}\u00A0rad", explain.length(result.effort_arm_m),
                                 setup::format_number(turn_rad, kInFormulas)),
                     travel_m, setup::Dimension::length));
    steps.push_back(
        explain.step("Work put in", "W = Fₑ × sₑ",
                     fmt::format("{} × {}", explain.force(effort_N), explain.length(travel_m)),
                     effort_N * travel_m, setup::Dimension::energy));
    steps.push_back(explain.step(
        result.torque_friction_Nm == 0.0
            ? "Work got out, at the loads and the lever's own weight: the same"
            : "Work got out, at the loads, the lever's own weight and the axle: the same",
        result.torque_friction_Nm == 0.0 ? "|τₗ| × φ" : "(|τₗ| + τ axle) × φ",
        fmt::format("{} × {}\u00A0rad", explain.torque(torque_out_Nm),
                    setup::format_number(turn_rad, kInFormulas)),
        torque_out_Nm * turn_rad, setup::Dimension::energy));
    steps.push_back(explain.step("What is won in force is lost in distance: for each step of the "
                                 "load the effort moves this many",
                                 "sₑ ÷ sₗ = dₑ ÷ dₗ",
                                 fmt::format("{} ÷ {}", explain.length(result.effort_arm_m),
                                             explain.length(*result.load_arm_m)),
                                 result.effort_arm_m / *result.load_arm_m,
                                 setup::Dimension::number));
    return steps;
}

Steps friction_steps(const Explainer& explain) {
    const LeverResult& result = explain.result;
    const double radius_m = friction_radius_m(explain.lever);
    if (radius_m == 0.0)
        return {in_words("The axle is taken as free of friction", "It takes nothing.")};
    if (!result.effort_N || !result.efficiency)
        return {
            in_words("The axle grips harder than the load", "There is no efficiency to state.")};
    const double reaction_N = result.axis_reaction_N.norm();
    const double frictionless_N = std::abs(*result.efficiency * *result.effort_N);
    return {
        explain.step(
            "Torque of the axle: friction × axle radius", "τ axle = μ × r × R",
            fmt::format("{} × {} × {}",
                        setup::format_number(explain.lever.friction.coefficient, kInFormulas),
                        explain.length(explain.lever.friction.radius_m), explain.force(reaction_N)),
            radius_m * reaction_N, setup::Dimension::torque),
        explain.step("Effort that just moves the load", "Fₑ", "", std::abs(*result.effort_N),
                     setup::Dimension::force),
        explain.step("Effort without friction", "F₀", "", frictionless_N, setup::Dimension::force),
        explain.step("Efficiency: the part of the work put in that comes out again", "η = F₀ ÷ Fₑ",
                     fmt::format("{} ÷ {}", explain.force(frictionless_N),
                                 explain.force(std::abs(*result.effort_N))),
                     *result.efficiency, setup::Dimension::number)};
}

} // namespace

Steps load_steps(std::size_t load_index, const Lever& lever, const LeverResult& result,
                 setup::UnitSystem units) {
    Steps steps;
    add_load({lever, result, units}, load_index, steps);
    return steps;
}

Steps lever_steps(LeverReading reading, const Lever& lever, const LeverResult& result,
                  setup::UnitSystem units) {
    const Explainer explain{lever, result, units};
    switch (reading) {
    case LeverReading::lever_class:
        return class_steps(explain);
    case LeverReading::effort:
        return effort_steps(explain);
    case LeverReading::effort_arm:
        return effort_arm_steps(explain);
    case LeverReading::load_torque:
        return load_torque_steps(explain);
    case LeverReading::load_arm:
        return load_arm_steps(explain);
    case LeverReading::ideal_advantage:
        return ideal_advantage_steps(explain);
    case LeverReading::actual_advantage:
        return actual_advantage_steps(explain);
    case LeverReading::reaction:
        return reaction_steps(explain);
    case LeverReading::found_load:
        return found_load_steps(explain);
    case LeverReading::travel:
        return travel_steps(explain);
    case LeverReading::friction:
        return friction_steps(explain);
    }
    return {};
}

} // namespace steelyard::words
