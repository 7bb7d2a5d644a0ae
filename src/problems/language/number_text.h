#pragma once
// Numbers as questions show them: plain digits without groups, so that what is shown can be typed
// back and found again in the text.

#include "problems/bank/family.h"

#include <string>

namespace steelyard::problems {

/// A number to so many significant figures, its whole part never cut; rounded half away from zero,
/// without trailing zeros where it is exact without them: "47.1", "1177", "0.4".
std::string number_text(double value, int figures);

/// A value with its unit: "12.5 kg", "30°", "2".
std::string with_unit(const std::string& number, const std::string& unit);

/// A quantity's number in its unit: as drawn, or, when it was computed, to so many figures.
std::string quantity_number(const Quantity& quantity, double value_si, int figures);

/// The same with its unit.
std::string quantity_text(const Quantity& quantity, double value_si, int figures);

/// Figures of numbers inside a worked solution: one more than answers have, so that a learner who
/// goes on with the number shown still arrives at the answer.
inline constexpr int kStepFigures = 4;

/// Figures that show a stated number whole: a draw is refused unless a short decimal says it.
inline constexpr int kGivenFigures = 12;

} // namespace steelyard::problems
