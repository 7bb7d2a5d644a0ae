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
    if (question.kind == problems::Kind::numeric)
        return question.answer_text;
    if (question.kind == problems::Kind::place)
        return question.spots[question.correct_spot].letter;
    return typed_choices(question.correct);
}

} // namespace steelyard::learner
