#pragma once
// From a drawn instance to the question that a learner reads.

#include "problems/bank/bank.h"
#include "problems/draw/instance.h"
#include "problems/question/question.h"

#include <string>

namespace steelyard::problems {

/// Writes out a drawn instance. The bank gives the wrong rules their drawings and steps.
Question write_question(const Bank& bank, const Instance& instance);

/// The code from which it is made again.
std::string code_of(const Instance& instance);

/// A text of the family with this instance's words and numbers.
std::string fill(const TemplateText& text, const Instance& instance);

/// Letter of the n-th choice or spot: A, B, ...
std::string letter(std::size_t index);

} // namespace steelyard::problems
