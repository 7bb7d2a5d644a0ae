#pragma once
// Where a learner stands, in words and bars for a terminal.

#include "learner/model/readiness.h"
#include "learner/model/staircase.h"
#include "learner/path/plan.h"
#include "learner/record/exam_record.h"

#include <string>
#include <vector>

namespace steelyard::cli {

/// The staircase from its foot up: a bar for each skill with a word.
std::string staircase_text(const learner::Course& course,
                           const std::vector<learner::Stair>& stairs);

/// How the readiness was reached: what each skill adds, the chance of each score, and what speaks
/// for trusting it.
std::string readiness_text(const learner::Course& course, const learner::Standing& standing,
                           const learner::Readiness& readiness,
                           const std::vector<learner::ExamResult>& exams);

} // namespace steelyard::cli
