#pragma once
// A mock exam that is being sat, as a value: the exam, the question on the screen, and whether the
// learner is asked to confirm its end. What has to be kept is said; keeping is the desk's.

#include "app/question/question_model.h"
#include "learner/exam/exam.h"

#include <cstdint>
#include <optional>
#include <string>

namespace steelyard::app {

struct ExamModel {
    learner::Exam exam;
    std::optional<QuestionModel> question; ///< on the screen; empty when the bank has it no more
    bool calculator = true;                ///< a calculation may be typed where a number is asked
    bool asks_to_end = false;
    std::string remark; ///< that an answer cannot be read; never whether it is right
};

/// Takes up an exam: puts its present question on the screen with the answer so far.
/// @param calculator  as the exam's blueprint says
ExamModel sit_exam(learner::Exam exam, const problems::Bank& bank, bool calculator);

// Each returns true when the exam is to be kept; after its end, nothing changes it any more.

/// Takes the answer so far into the exam, if it is another one than before.
bool take_in_answer(ExamModel& model, const problems::Bank& bank, const learner::Clock& now);
/// Puts another item on the screen, with the answer so far taken in first.
bool show_item(ExamModel& model, std::size_t item, const problems::Bank& bank,
               const learner::Clock& now);
/// Hangs a weight below an item, to come back to it, or takes it off.
bool turn_weight(ExamModel& model, std::size_t item, const learner::Clock& now);
/// Counts the time. The exam may be over after it.
bool pass_time(ExamModel& model, const learner::Clock& now);
bool end_exam(ExamModel& model, const problems::Bank& bank, const learner::Clock& now);

/// What Enter does: takes the answer in and shows the next item; after the last one it asks whether
/// to end. An answer that cannot be read stays on the screen.
bool go_on(ExamModel& model, const problems::Bank& bank, const learner::Clock& now);

/// "41 min left", rounded up; of the last minute its seconds.
std::string left_text(std::int64_t left_ms);
/// Time until that text is another one [ms].
std::int64_t until_other_text(std::int64_t left_ms);

/// "All answered. End the exam?" or how many are not.
std::string end_question(const ExamModel& model);

} // namespace steelyard::app
