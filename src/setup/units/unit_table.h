#pragma once
// All units that can be typed, as one table.

#include "setup/units/units.h"

#include <string_view>
#include <vector>

namespace steelyard::setup {

/// A unit: value_SI = value × numerator / denominator (for angles × π more when half_turns is set).
/// Two whole numbers instead of one factor, so that typed decimals convert without a second
/// rounding: 35 × 0.01 is not the double nearest to 0.35, 35 / 100 is.
struct Unit {
    Dimension dimension = Dimension::number;
    std::string_view symbol; ///< how it is written
    double numerator = 1.0;
    double denominator = 1.0;
    bool half_turns = false; ///< value × numerator / denominator is in half turns, π rad each
    bool mass_based = false; ///< a torque written with a mass ("kg·m"): only under mass_as_force
    /// Other spellings, divided by '|'; the parts of a product are divided by '*'.
    std::string_view spellings;
};

/// The whole table; within a dimension the most usual unit first.
const std::vector<Unit>& all_units();

/// Unit by its canonical symbol; null when there is none.
const Unit* unit_by_symbol(Dimension dimension, std::string_view symbol);

/// Unit by any spelling in the normalised form of typed_text.h; null when there is none. Capitals
/// are distinguished where they matter and forgiven where not.
const Unit* unit_by_spelling(Dimension dimension, std::string_view spelling);

double value_in_SI(double value, const Unit& unit);
double value_in_unit(double value_SI, const Unit& unit);

} // namespace steelyard::setup
