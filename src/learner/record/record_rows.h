#pragma once
// How answers and standings lie in the tables; for the parts of the record only.

#include "learner/record/answer_columns.h"
#include "learner/record/record.h"

#include <functional>
#include <optional>

namespace steelyard::learner {

/// A progress is told after so many rows.
inline constexpr std::int64_t kProgressEvery = 10000;

/// The standing as kept, without looking whether the course has changed since.
Recorded<Standing> kept_standing(Database& database, std::int64_t learner, const Course& course,
                                 const Clock& clock);

/// Writes what is folded from the answers; only skills that differ from `before`.
Recorded<void> keep_standing(Database& database, std::int64_t learner, const Course& course,
                             const Standing& before, const Standing& after);

/// Folds every answer of a learner anew.
/// @param progress  told after every kProgressEvery answers how many are done; may be empty
Recorded<Standing> fold_answers(Database& database, std::int64_t learner, const Course& course,
                                const Clock& clock,
                                const std::function<void(std::int64_t)>& progress);

/// Folds every answer anew and keeps the result, with the counts of wrong rules. Within a
/// transaction of the caller's.
Recorded<Standing> refold(Database& database, std::int64_t learner, const Course& course,
                          const Clock& clock);

/// The standing as kept when it was folded for this course; empty when the course has changed
/// since. Within a transaction, if only for reading.
Recorded<std::optional<Standing>> kept_for_course(Database& database, std::int64_t learner,
                                                  const Course& course, const Clock& clock);

/// The standing, folded anew when the course has changed since. Within a transaction.
Recorded<Standing> current_standing(Database& database, std::int64_t learner, const Course& course,
                                    const Clock& clock);

/// Adds answers, all that is folded from them, and gives the standing after them. Within a
/// transaction. An answer that is there already changes nothing.
Recorded<Standing> fold_in(Database& database, std::int64_t learner, const Course& course,
                           const std::vector<Answer>& answers, const Clock& clock);

/// A mark of everything in a course that the folding depends on.
std::string model_mark(const Course& course);

/// Adds an answer; one that is there already is left alone.
Recorded<void> insert_answer(Statement& insert, std::int64_t learner, const Answer& answer);
Recorded<Statement> prepare_insert(Database& database);

/// Numbers all answers anew in the order of their time, after some were brought in from elsewhere.
Recorded<void> put_in_order(Database& database);

} // namespace steelyard::learner
