#pragma once
// How exams lie in the tables; for the parts of the record only.

#include "learner/exam/exam.h"
#include "learner/record/file/database.h"

#include <string_view>

namespace steelyard::learner {

/// A week: longer than any blueprint allows.
inline constexpr std::int64_t kLongestExam_ms = 7 * kDay_ms;

/// An exam with what it came to, which the record keeps beside it.
struct KeptExam {
    Exam exam;
    int right_answers = 0; ///< these two are 0 until it is finished
    int questions = 0;
};

/// A count of questions of a row that may have been damaged: not below 0, nor beyond what any
/// blueprint asks.
int count_in(const Statement& row, int column);

/// A share of such a row, from 0 to 1.
double share_in(const Statement& row, int column);

/// Finds the exams of a learner; the first parameter is the learner's id, those of the condition
/// follow.
/// @param condition  in SQL, on columns of the table `exam`; an order may follow
Recorded<Statement> find_exams(Database& database, std::string_view condition);

/// Reads the exam of the current row, and its items. Rows may have been damaged: an exam that has
/// items stands at one of them, and shares are within their bounds.
Recorded<KeptExam> read_exam(Database& database, const Statement& row);

/// Adds an exam, without its items, and gives it its id.
/// @return false when one of this moment and seed is there already, which is left alone
Recorded<bool> insert_exam(Database& database, std::int64_t learner, KeptExam& kept);

/// Writes the items that differ from what is kept.
Recorded<void> write_items(Database& database, const Exam& exam);

} // namespace steelyard::learner
