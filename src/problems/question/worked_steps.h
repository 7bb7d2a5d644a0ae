#pragma once
// The worked solution of an instance, from the solver's own quantities.

#include "problems/draw/instance.h"
#include "problems/question/question.h"

#include <string>
#include <vector>

namespace steelyard::problems {

/// Every step of the family for this instance. A numeric question on a lever begins by naming the
/// axis.
std::vector<Step> worked_steps(const Instance& instance);

/// A step's line in numbers: "τ = 118 N × 0.4 m = 47.1 N·m"; the axis is just named.
std::string step_line(const Step& step);

/// An expression in symbols: "F_load × d_load".
std::string in_symbols(const Expression& expression, const Family& family);

/// The same in numbers with units: "118 N × 0.4 m".
std::string in_numbers(const Expression& expression, const Instance& instance);

} // namespace steelyard::problems
