#pragma once
// The report of a mock exam for a terminal.

#include "cli/verbs/verb.h"
#include "learner/exam/exam.h"

#include <iosfwd>

namespace steelyard::cli {

/// Score, by skill, by wrong rule.
void show_report(const learner::Course& course, const learner::Exam& exam,
                 const learner::ExamReport& report, std::ostream& out);

/// Each mistake with its question, what was answered, why that is wrong, and the worked steps; one
/// after the other as long as the learner wants, all at once where nobody can type.
void go_through_mistakes(const learner::Exam& exam, const learner::ExamReport& report,
                         const Streams& streams);

} // namespace steelyard::cli
