#pragma once
// A mock exam that is being sat, as a value: the exam, the question on the screen, and whether the
// learner is asked to confirm its end. What has to be kept is said; keeping is the desk's.

#include "app/question/question_model.h"
#include "learner/exam.h"

#include <optional>
#include <string>

namespace steelyard::app {

struct ExamModel {
    learner::Exam exam;
    std::optional<QuestionModel> question; ///< on the screen; empty when the bank has it no more
    bool asks_to_end = false;
    std::string remark; ///< that an answer cannot be read; never whether it is right
};

/// Takes up an exam: puts its present question on the screen with the answer so far.
ExamModel sit_exam(learner::Exam exam, const problems::Bank& bank);

// Each returns true when the exam is to be kept; after its end, nothing changes it any more.

/// Takes the answer so far into the exam, if it is another one than before.
bool take_in_answer(ExamModel& model, const problems::Bank& bank, const learner::Clock& now);
/// Puts another item on the screen, with the answer so far taken in first.
bool show_item(ExamModel& model, std::size_t item, const problems::Bank& bank,
               const learner::Clock& now);
bool toggle_flag(ExamModel& model, const learner::Clock& now);
/// Counts the time. The exam may be over after it.
bool pass_time(ExamModel& model, const learner::Clock& now);
bool end_exam(ExamModel& model, const problems::Bank& bank, const learner::Clock& now);

/// What Enter does: takes the answer in and shows the next item; after the last one it asks whether
/// to end. An answer that cannot be read stays on the screen.
bool go_on(ExamModel& model, const problems::Bank& bank, const learner::Clock& now);

/// "All answered. End the exam?" or how many are not.
std::string end_question(const ExamModel& model);

} // namespace steelyard::app
