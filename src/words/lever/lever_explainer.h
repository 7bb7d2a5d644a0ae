#pragma once
// The parts that the explanations of a lever are put together from: arms, weights, torques, sums.

#include "mechanics/lever/lever_solve.h"
#include "words/lever/lever_steps.h"
#include "words/lever/lever_words.h"

#include <string>
#include <vector>

namespace steelyard::words {

/// Everything that the explanation of one lever needs.
struct Explainer {
    const mechanics::Lever& lever;
    const mechanics::LeverResult& result;
    setup::UnitSystem units;

    /// "the axis", or the name of the first of two supports.
    std::string axis() const;
    std::string text(double value_SI, setup::Dimension dimension) const;
    std::string length(double value_m) const { return text(value_m, setup::Dimension::length); }
    std::string force(double value_N) const { return text(value_N, setup::Dimension::force); }
    std::string torque(double value_Nm) const { return text(value_Nm, setup::Dimension::torque); }

    ComputedStep step(std::string title, std::string symbols, std::string numbers, double value_SI,
                      setup::Dimension dimension) const;
};

/// Adds distance to the point, angle and moment arm of a pull.
/// @param index  its sign in the formulas: "ₑ"
void add_arm(const Explainer& explain, const std::string& whose, const std::string& index,
             const mechanics::Vec2& point_m, const mechanics::Vec2& direction, double arm_m,
             Steps& steps);

/// Adds force, arm and torque of one load.
void add_load(const Explainer& explain, std::size_t load_index, Steps& steps);

/// Adds the same for the lever's own weight; nothing for a weightless one.
void add_own_weight(const Explainer& explain, Steps& steps);

/// The sign of a load in formulas: "₁" for the first.
std::string raised_index(std::size_t index);

/// "counter-clockwise, positive"
std::string turning_sense(double torque_Nm);

/// Steps to the size of the load that is sought.
Steps found_load_steps(const Explainer& explain);

/// The distance between two supports.
ComputedStep span_step(const Explainer& explain);

/// Steps to the push of the second of two supports.
Steps second_support_steps(const Explainer& explain);

/// Adds the sum of all torques that the effort has to balance.
void add_torque_sum(const Explainer& explain, Steps& steps);

} // namespace steelyard::words
