#pragma once
// Marking of a typed number with a unit.

#include "problems/bank/bank.h"
#include "problems/marking/marking.h"

#include <string>

namespace steelyard::problems {

/// What a typed number is held against.
struct WantedNumber {
    double value = 0.0;     ///< in `unit`
    double tolerance = 0.0; ///< in `unit`
    std::string unit;       ///< empty for a pure number
    std::string text;       ///< the right answer as shown
};

/// Reads and judges a typed number, without looking at wrong rules. `typed` is filled whenever a
/// number of the right kind was read; `half_step` is then half of the last digit typed, in the
/// unit, when at least two figures were, else 0.
Marking mark_number(const WantedNumber& wanted, const std::string& answer, double& half_step);

/// Marks the answer to a question that wants a number.
Marking mark_numeric(const Bank& bank, const Question& question, const std::string& answer);

} // namespace steelyard::problems
