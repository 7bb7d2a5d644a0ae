#include "words/lever/lever_explainer.h"

#include "mechanics/lever/lever_geometry.h"
#include "setup/lever/direction.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace steelyard::words {
namespace {

using mechanics::ForceReading;
using mechanics::Vec2;

std::string in_brackets_if_negative(const std::string& text, double value) {
    return value < 0.0 ? "(" + text + ")" : text;
}

/// Less than this is rounding: it reads "0".
constexpr double kTurnsNothing_Nm = 1e-9;

void add_torque(const Explainer& explain, const std::string& index, const ForceReading& reading,
                Steps& steps) {
    const double force_N = reading.force_N.norm();
    const std::string sign = reading.torque_Nm < 0.0 ? "−" : "";
    const bool turns = std::abs(reading.torque_Nm) >= kTurnsNothing_Nm;
    steps.push_back(explain.step(
        turns ? fmt::format("Torque: it turns the lever {}", turning_sense(reading.torque_Nm))
              : std::string("Torque: it turns nothing"),
        fmt::format("τ{0} = {1}F{0} × d{0}", index, sign),
        fmt::format("{}{} × {}", sign, explain.force(force_N), explain.length(reading.arm_m)),
        reading.torque_Nm, setup::Dimension::torque));
}

void add_weight(const Explainer& explain, const std::string& what, const std::string& index,
                double mass_kg, Steps& steps) {
    steps.push_back(explain.step(
        fmt::format("Weight of {}", what), fmt::format("F{0} = m{0} × g", index),
        fmt::format("{} × {}", explain.text(mass_kg, setup::Dimension::mass),
                    explain.text(explain.lever.gravity_m_s2, setup::Dimension::acceleration)),
        mass_kg * explain.lever.gravity_m_s2, setup::Dimension::force));
    if (explain.units == setup::UnitSystem::us) // lb × ft/s² would be no lbf yet
        steps.back().numbers =
            fmt::format("{} × {} lbf/lb", explain.text(mass_kg, setup::Dimension::mass),
                        setup::format_number(
                            explain.lever.gravity_m_s2 / mechanics::kStandardGravity, kInFormulas));
}

bool has_own_weight(const Explainer& explain) {
    return explain.lever.own_weight.mass_kg > 0.0;
}

} // namespace

std::string raised_index(std::size_t index) {
    static constexpr std::string_view kDigits[] = {"₀", "₁", "₂", "₃", "₄",
                                                   "₅", "₆", "₇", "₈", "₉"};
    std::string text;
    for (const char digit : std::to_string(index + 1))
        text += kDigits[digit - '0'];
    return text;
}

std::string turning_sense(double torque_Nm) {
    return torque_Nm > 0.0 ? "counter-clockwise, positive" : "clockwise, negative";
}

std::string Explainer::axis() const {
    return mechanics::rests_on_two(lever) ? mechanics::axis_name(lever) : "the axis";
}

std::string Explainer::text(double value_SI, setup::Dimension dimension) const {
    return formula_text(value_SI, dimension, units);
}

ComputedStep Explainer::step(std::string title, std::string symbols, std::string numbers,
                             double value_SI, setup::Dimension dimension) const {
    return computed_step(std::move(title), std::move(symbols), std::move(numbers), value_SI,
                         dimension, units);
}

void add_arm(const Explainer& explain, const std::string& whose, const std::string& index,
             const Vec2& point_m, const Vec2& direction, double arm_m, Steps& steps) {
    const Vec2 r_m = point_m - explain.result.axis_m;
    const double distance_m = r_m.norm();
    const bool along_x = std::abs(r_m.y()) <= mechanics::kSamePlace_m;
    steps.push_back(explain.step(
        fmt::format("Distance from {} to the point of action of {}", explain.axis(), whose),
        along_x ? fmt::format("r{0} = |x{0} − xₐ|", index)
                : fmt::format("r{0} = √(Δx² + Δy²)", index),
        along_x ? fmt::format("|{} − {}|", explain.length(point_m.x()),
                              in_brackets_if_negative(explain.length(explain.result.axis_m.x()),
                                                      explain.result.axis_m.x()))
                : fmt::format("√(({})² + ({})²)", explain.length(r_m.x()), explain.length(r_m.y())),
        distance_m, setup::Dimension::length));
    if (distance_m < mechanics::kSamePlace_m) {
        steps.push_back(explain.step(
            fmt::format("It acts at {} itself, so it has no moment arm", explain.axis()),
            fmt::format("d{} = 0", index), "", arm_m, setup::Dimension::length));
        return;
    }
    const double angle_rad =
        std::atan2(std::abs(mechanics::cross(r_m, direction)), r_m.dot(direction));
    steps.push_back(
        explain.step("Moment arm: not the distance to the point, but to the line of action",
                     fmt::format("d{0} = r{0} × sin θ{0}", index),
                     fmt::format("{} × sin {}", explain.length(distance_m),
                                 explain.text(angle_rad, setup::Dimension::angle)),
                     arm_m, setup::Dimension::length));
}

void add_load(const Explainer& explain, std::size_t load_index, Steps& steps) {
    const mechanics::Load& load = explain.lever.loads[load_index];
    const ForceReading& reading = explain.result.loads[load_index];
    const std::string index = raised_index(load_index);
    if (const auto* couple = std::get_if<mechanics::Couple>(&load.action)) {
        steps.push_back(explain.step(
            fmt::format("{}: a pure torque, the same wherever it acts", load.name),
            fmt::format("τ{}", index), "", couple->torque_Nm, setup::Dimension::torque));
        return;
    }
    Vec2 direction{0.0, -1.0};
    if (const auto* pull = std::get_if<mechanics::PointForce>(&load.action))
        direction = mechanics::unit_vector(pull->direction_rad);
    if (mechanics::sought_load(explain.lever) == load_index) {
        steps.push_back(explain.step(fmt::format("{}: the size that was found", load.name),
                                     "F" + index, "", explain.result.load_found.value_or(0.0),
                                     setup::Dimension::force));
    } else if (const auto* weight = std::get_if<mechanics::Weight>(&load.action)) {
        add_weight(explain, load.name, index, weight->mass_kg, steps);
    } else if (const auto* force = std::get_if<mechanics::PointForce>(&load.action)) {
        steps.push_back(explain.step(
            fmt::format("{}: pulls {}", load.name, setup::direction_in_words(force->direction_rad)),
            "F" + index, "", force->magnitude_N, setup::Dimension::force));
    }
    add_arm(explain, load.name, index, reading.point_m, direction, reading.arm_m, steps);
    add_torque(explain, index, reading, steps);
}

void add_own_weight(const Explainer& explain, Steps& steps) {
    if (!has_own_weight(explain))
        return;
    add_weight(explain, "the lever itself", "ₒ", explain.lever.own_weight.mass_kg, steps);
    add_arm(explain, "its own weight", "ₒ", explain.result.own_weight.point_m, {0.0, -1.0},
            explain.result.own_weight.arm_m, steps);
    add_torque(explain, "ₒ", explain.result.own_weight, steps);
}

void add_torque_sum(const Explainer& explain, Steps& steps) {
    std::vector<double> torques_Nm;
    std::string symbols = "τₗ =";
    for (std::size_t i = 0; i < explain.result.loads.size(); ++i) {
        torques_Nm.push_back(explain.result.loads[i].torque_Nm);
        symbols += fmt::format("{} τ{}", i == 0 ? "" : " +", raised_index(i));
    }
    if (has_own_weight(explain)) {
        symbols += torques_Nm.empty() ? " τₒ" : " + τₒ";
        torques_Nm.push_back(explain.result.own_weight.torque_Nm);
    }
    if (torques_Nm.empty())
        symbols += " 0";
    steps.push_back(
        explain.step(mechanics::rests_on_two(explain.lever)
                         ? fmt::format("All that {} has to balance", explain.lever.effort.name)
                         : std::string("All that the effort has to balance"),
                     symbols, sum_of(torques_Nm, setup::Dimension::torque, explain.units),
                     explain.result.torque_load_Nm, setup::Dimension::torque));
}

} // namespace steelyard::words
