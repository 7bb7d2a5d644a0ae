#pragma once
// The beam of an exam's questions in a terminal: a notch for each, and a small weight hung below
// those to come back to.

#include "learner/exam/exam.h"

#include <iosfwd>

namespace steelyard::cli {

/// While the exam goes on: which are answered, which is the present one, what to come back to.
void show_beam(const learner::Exam& exam, std::ostream& out);

/// Of its report: right, wrong and unanswered by sign, and in a line that counts them.
void show_beam(const learner::Exam& exam, const learner::ExamReport& report, std::ostream& out);

} // namespace steelyard::cli
