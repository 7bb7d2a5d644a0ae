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

/// A number as it was read.
struct ReadNumber {
    double as_typed = 0.0; ///< bare, without what its unit makes of it
    /// Half of its last digit, in the wanted unit, when at least two figures were typed, else 0.
    double half_step = 0.0;
    int figures = 0; ///< typed at least
    /// It is right only when the zeros at its end are no figures: "190" for 186.6.
    bool by_zeros = false;
};

/// Reads and judges a typed number, without looking at wrong rules. `typed` and `read` are filled
/// whenever a number of the right kind was read.
Marking mark_number(const WantedNumber& wanted, const std::string& answer, const MarkRules& rules,
                    ReadNumber& read);

/// Marks the answer to a question that wants a number.
Marking mark_numeric(const Bank& bank, const Question& question, const std::string& answer,
                     const MarkRules& rules);

} // namespace steelyard::problems
