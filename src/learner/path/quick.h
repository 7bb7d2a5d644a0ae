#pragma once
// The quick quiz: five questions that take less than three minutes together.

#include "learner/path/next.h"

#include <cstdint>
#include <vector>

namespace steelyard::learner {

inline constexpr std::size_t kQuickQuestions = 5;

/// Five questions of different skills that need no long computing: choices, places, orders,
/// changes, and numbers of difficulty 1. First of the skills that are begun and least sure, then of
/// others whose prerequisites are known; never two of one family. Fewer where the bank has fewer.
/// @param choice  any number; the same gives the same quiz
/// Cheap.
std::vector<Next> quick_quiz(const Course& course, const Standing& standing, const Clock& clock,
                             std::uint64_t choice);

} // namespace steelyard::learner
