#pragma once
// The nearest useful remark on a wrong number that no wrong rule and no slip gives.

#include "problems/question/question.h"

#include <string>

namespace steelyard::problems {

/// A wrong number as it was read.
struct WrongNumber {
    double in_unit = 0.0;   ///< in the question's unit
    double as_typed = 0.0;  ///< the bare number
    double half_step = 0.0; ///< half of its last digit, in the question's unit
};

/// Which step ends in it, which given number it is, that it is close, or in which direction it is
/// off: a sentence or two that keep the answer back.
std::string remark_on(const Question& question, const WrongNumber& number);

} // namespace steelyard::problems
