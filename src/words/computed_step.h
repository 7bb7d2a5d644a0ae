#pragma once
// How a reading was computed, line by line, for levers and bodies alike.
//
// Numbers in the formulas are shown with four figures, but every result is computed from the full
// ones. Lengths, forces and torques keep one unit throughout (m, N, N·m or ft, lbf, ft·lbf), so
// that the formulas can be followed with a pocket calculator.

#include "setup/units/format_quantity.h"

#include <string>
#include <vector>

namespace steelyard::words {

/// One line of a computation.
struct ComputedStep {
    std::string title;   ///< what is found, and why this way: one short sentence
    std::string symbols; ///< "τ₁ = F₁ × d₁"; may be empty where words say it all
    std::string numbers; ///< "294 N × 0.8 m"; may be empty
    std::string result;  ///< "235 N·m"
    double value_SI = 0.0;
    setup::Dimension dimension = setup::Dimension::number; ///< of value_SI
};
using Steps = std::vector<ComputedStep>;

/// How numbers stand in formulas: four figures, no idle zeros.
inline constexpr setup::NumberStyle kInFormulas{4, false};

/// A value as it stands in a formula, with the formula's unit.
std::string formula_text(double value_SI, setup::Dimension dimension, setup::UnitSystem units);

/// A step whose result is a value. Numbers that only repeat the result are left out.
ComputedStep computed_step(std::string title, std::string symbols, std::string numbers,
                           double value_SI, setup::Dimension dimension, setup::UnitSystem units);

/// A step in words alone, for what cannot be computed.
ComputedStep in_words(std::string title, std::string result);

/// "a + b − c" of terms in their unit.
std::string sum_of(const std::vector<double>& terms_SI, setup::Dimension dimension,
                   setup::UnitSystem units);

} // namespace steelyard::words
