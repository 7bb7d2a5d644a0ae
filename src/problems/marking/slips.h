#pragma once
// Slips that the answer to any numeric question can suffer, once: the wrong rule, where it can
// happen, and by what factor it changes the number. A new one is a row of the table in slips.cpp.

#include "problems/question/question.h"

#include <string_view>
#include <vector>

namespace steelyard::problems {

/// A slip that can happen in a question.
struct Slip {
    std::string_view rule; ///< id: "inches-for-feet"
    double factor = 1.0;   ///< what it makes of the right answer
};

/// The slips of a numeric question, the likelier before the less likely. Gravity is the one that
/// the question states, ratios of units are those of the table of units.
std::vector<Slip> slips_of(const Question& question);

} // namespace steelyard::problems
