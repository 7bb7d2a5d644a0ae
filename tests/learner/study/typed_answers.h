#pragma once
// Answers to a question as problems::mark reads them.

#include "problems/question/question.h"

#include <cstddef>
#include <string>
#include <vector>

namespace steelyard::learner {

/// Choices by their numbers, counted from 1.
inline std::string typed_choices(const std::vector<std::size_t>& choices) {
    std::string typed;
    for (const std::size_t choice : choices)
        typed += (typed.empty() ? "" : " ") + std::to_string(choice + 1);
    return typed;
}

inline std::string right_answer(const problems::Question& question) {
    if (wanted_number(question))
        return question.answer_text;
    if (wanted_place(question))
        return spots_of(question)[wanted_place(question)->correct].letter;
    return typed_choices(right_ones(question));
}

} // namespace steelyard::learner
