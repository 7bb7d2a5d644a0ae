#pragma once
// Mock exams in the record: kept after every change, found again after a crash.

#include "learner/exam/exam.h"
#include "learner/record/record.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace steelyard::learner {

/// What a finished exam came to.
struct ExamResult {
    std::int64_t id = 0;
    std::string title;
    TimeMs finished_ms = 0;
    std::int64_t used_ms = 0;
    int right = 0;
    int of = 0;
    int pass = 0;
};

/// Keeps an exam as it is now; a new one gets its id. On disk when it returns: a few milliseconds,
/// after every answer and every few seconds for its clock.
Recorded<void> keep_exam(Record& record, std::int64_t learner, Exam& exam);

/// The exam that was begun and not finished, the newest one if there are several; one that has lost
/// all its items counts as none. It has items, and stands at one of them. Call resume() before
/// going on with it.
Recorded<std::optional<Exam>> unfinished_exam(Record& record, std::int64_t learner);

/// An exam by its id, to look at again; one whose rows were damaged may have no items.
Recorded<std::optional<Exam>> exam_by_id(Record& record, std::int64_t learner, std::int64_t id);

/// Finished exams, newest first.
Recorded<std::vector<ExamResult>> finished_exams(Record& record, std::int64_t learner, int most);

/// Keeps a finished exam, its result and its answers, all in one. A second call changes nothing.
Recorded<Standing> close_exam(Record& record, std::int64_t learner, const Course& course,
                              Exam& exam, const ExamReport& report, const Clock& clock);

/// Deletes an exam that was begun, with its answers, none of which has counted yet.
Recorded<void> give_up_exam(Record& record, std::int64_t learner, std::int64_t id);

} // namespace steelyard::learner
