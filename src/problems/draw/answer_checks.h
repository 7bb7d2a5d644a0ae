#pragma once
// The last part of a draw: the answer, what each wrong rule gives, choices and their order, and
// whether all of it is clear enough to be asked.

#include "problems/draw/instance.h"

namespace steelyard::problems {

/// Finds answer, choices, order, change or spots of a solved instance.
/// @return none, or why the instance cannot be asked
Refusal finish(const Family& family, Random& random, Instance& instance);

/// Every stated number that was computed has to be a short decimal, and the answer must not stand
/// in the prompt.
Refusal check_given(const Family& family, const Instance& instance);

} // namespace steelyard::problems
