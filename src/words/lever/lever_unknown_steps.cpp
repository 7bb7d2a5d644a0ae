// Steps to what may be sought in place of an effort: one load, or what two supports bear.

#include "mechanics/lever/lever_geometry.h"
#include "words/lever/lever_explainer.h"

#include <fmt/format.h>

#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::ForceReading;
using mechanics::Vec2;

/// The way a load pulls; of a couple none.
Vec2 direction_of(const mechanics::Load& load) {
    if (const auto* pull = std::get_if<mechanics::PointForce>(&load.action))
        return mechanics::unit_vector(pull->direction_rad);
    return {0.0, -1.0};
}

void add_effort_torque(const Explainer& explain, Steps& steps) {
    const ForceReading& effort = explain.result.effort;
    const double effort_N = explain.result.effort_N.value_or(0.0);
    add_arm(explain, explain.lever.effort.name, "ₑ", effort.point_m,
            mechanics::unit_vector(explain.lever.effort.direction_rad), effort.arm_m, steps);
    const std::string sign = effort.torque_Nm < 0.0 ? "−" : "";
    steps.push_back(explain.step(
        fmt::format("Torque of the known effort: it turns the lever {}",
                    turning_sense(effort.torque_Nm)),
        fmt::format("τₑ = {}Fₑ × dₑ", sign),
        fmt::format("{}{} × {}", sign, explain.force(effort_N), explain.length(effort.arm_m)),
        effort.torque_Nm, setup::Dimension::torque));
}

/// Adds all torques but that of the load that is sought, and their sum.
/// @return the sum [N·m]
double add_known_torques(const Explainer& explain, std::size_t sought, Steps& steps) {
    add_effort_torque(explain, steps);
    std::vector<double> torques_Nm{explain.result.effort.torque_Nm};
    std::string symbols = "τ = τₑ";
    for (std::size_t i = 0; i < explain.lever.loads.size(); ++i) {
        if (i == sought)
            continue;
        add_load(explain, i, steps);
        torques_Nm.push_back(explain.result.loads[i].torque_Nm);
        symbols += " + τ" + raised_index(i);
    }
    add_own_weight(explain, steps);
    if (explain.lever.own_weight.mass_kg > 0.0) {
        torques_Nm.push_back(explain.result.own_weight.torque_Nm);
        symbols += " + τₒ";
    }
    double sum_Nm = 0.0;
    for (const double torque_Nm : torques_Nm)
        sum_Nm += torque_Nm;
    steps.push_back(
        explain.step(fmt::format("All that {} has to balance", explain.lever.loads[sought].name),
                     symbols, sum_of(torques_Nm, setup::Dimension::torque, explain.units), sum_Nm,
                     setup::Dimension::torque));
    return sum_Nm;
}

/// Adds the division by the load's arm: where no axle grips, the load itself.
void add_balance(const Explainer& explain, std::size_t sought, double known_Nm, Steps& steps) {
    const mechanics::AxisFriction& friction = explain.lever.friction;
    const std::string index = raised_index(sought);
    const double found_N = *explain.result.load_found;
    const std::string sign = found_N < 0.0 ? "−" : "";
    const std::string arm = explain.length(explain.result.loads[sought].arm_m);
    const std::string torque = explain.torque(std::abs(known_Nm));
    if (friction.coefficient * friction.radius_m == 0.0) {
        steps.push_back(explain.step(
            found_N < 0.0 ? "Balance: the load would turn the same way as all else, so it comes "
                            "out negative and would have to pull the other way"
                          : "Balance: the load's torque is equal to all else's and turns the "
                            "other way",
            fmt::format("F{0} = {1}|τ| ÷ d{0}", index, sign),
            fmt::format("{}{} ÷ {}", sign, torque, arm), found_N, setup::Dimension::force));
        return;
    }
    steps.push_back(explain.step(
        "The axle resists with μ × axle radius × reaction and takes its part: this is what the "
        "effort just moves",
        fmt::format("F{0} = {1}(|τ| − μ r R) ÷ d{0}", index, sign),
        fmt::format("{}({} − {} × {} × {}) ÷ {}", sign, torque,
                    setup::format_number(friction.coefficient, kInFormulas),
                    explain.length(friction.radius_m),
                    explain.force(explain.result.axis_reaction_N.norm()), arm),
        found_N, setup::Dimension::force));
}

} // namespace

Steps found_load_steps(const Explainer& explain) {
    const auto sought = mechanics::sought_load(explain.lever);
    if (!sought)
        return {in_words("Every load is known here", "The effort is what is found.")};
    const mechanics::Load& load = explain.lever.loads[*sought];
    Steps steps;
    const double known_Nm = add_known_torques(explain, *sought, steps);
    if (!explain.result.load_found) {
        steps.push_back(in_words("No size of this load balances", "There is no load to state."));
        return steps;
    }
    if (std::holds_alternative<mechanics::Couple>(load.action)) {
        steps.push_back(explain.step("A pure torque balances it, the same wherever it acts",
                                     fmt::format("τ{} = −τ", raised_index(*sought)), "",
                                     *explain.result.load_found, setup::Dimension::torque));
        return steps;
    }
    const ForceReading& reading = explain.result.loads[*sought];
    add_arm(explain, load.name, raised_index(*sought), reading.point_m, direction_of(load),
            reading.arm_m, steps);
    add_balance(explain, *sought, known_Nm, steps);
    if (std::holds_alternative<mechanics::Weight>(load.action) && *explain.result.load_found > 0.0)
        steps.push_back(explain.step(
            "Its mass", "m = F ÷ g",
            explain.units == setup::UnitSystem::us // lbf ÷ ft/s² would be no lb yet
                ? std::string()
                : fmt::format(
                      "{} ÷ {}", explain.force(*explain.result.load_found),
                      explain.text(explain.lever.gravity_m_s2, setup::Dimension::acceleration)),
            *explain.result.load_found / explain.lever.gravity_m_s2, setup::Dimension::mass));
    return steps;
}

ComputedStep span_step(const Explainer& explain) {
    return explain.step(
        fmt::format("Distance between the supports, which push straight up: the moment arm of {}",
                    explain.lever.effort.name),
        "d", "", explain.result.effort_arm_m, setup::Dimension::length);
}

Steps second_support_steps(const Explainer& explain) {
    Steps steps;
    add_torque_sum(explain, steps);
    if (!explain.result.effort_N) {
        steps.push_back(in_words("Both supports bear on one line", "Their shares are open."));
        return steps;
    }
    steps.push_back(span_step(explain));
    const double push_N = *explain.result.effort_N;
    const std::string sign = push_N < 0.0 ? "−" : "";
    steps.push_back(explain.step(
        push_N < 0.0
            ? fmt::format("Moments about {}: {} would have to pull down, so it comes out negative",
                          explain.axis(), explain.lever.effort.name)
            : fmt::format("Moments about {}: the push of {} turns the beam against the loads",
                          explain.axis(), explain.lever.effort.name),
        fmt::format("F₂ = {}|τₗ| ÷ d", sign),
        fmt::format("{}{} ÷ {}", sign, explain.torque(std::abs(explain.result.torque_load_Nm)),
                    explain.length(explain.result.effort_arm_m)),
        push_N, setup::Dimension::force));
    return steps;
}

} // namespace steelyard::words
