#include "learner/record/exam_record.h"

#include "learner/record/exam_rows.h"
#include "learner/record/record_rows.h"
#include "setup/toml/letters.h"

#include <algorithm>

namespace steelyard::learner {

namespace {

/// The exam of the first row, if there is one.
Recorded<std::optional<Exam>> first_exam(Database& database, Statement& rows) {
    const auto found = rows.row();
    if (!found)
        return tl::make_unexpected(found.error());
    if (!*found)
        return std::nullopt;
    return read_exam(database, rows).map([](KeptExam kept) {
        return std::optional(std::move(kept.exam));
    });
}

Recorded<void> write_exam(Database& database, std::int64_t learner, Exam& exam) {
    if (exam.id == 0) {
        KeptExam kept{exam, 0, 0};
        const auto added = insert_exam(database, learner, kept);
        if (!added)
            return tl::make_unexpected(added.error());
        if (!*added)
            return tl::make_unexpected(
                RecordError{Trouble::refused, "An exam of this moment is kept already."});
        exam.id = kept.exam.id;
        return {};
    }
    auto update =
        database.prepare("UPDATE exam SET used_ms = ?, seen_ms = ?, item = ? WHERE id = ?");
    if (!update)
        return tl::make_unexpected(update.error());
    return update->with(exam.used_ms, exam.seen_ms, static_cast<std::int64_t>(exam.at), exam.id)
        .run();
}

} // namespace

Recorded<void> keep_exam(Record& record, std::int64_t learner, Exam& exam) {
    auto transaction = record.begin();
    Database& database = record.database();
    if (!transaction)
        return tl::make_unexpected(transaction.error());
    const std::int64_t id = exam.id;
    auto kept = write_exam(database, learner, exam)
                    .and_then([&] { return write_items(database, exam); })
                    .and_then([&] { return transaction->commit(); });
    if (!kept)
        exam.id = id;
    return kept;
}

Recorded<std::optional<Exam>> unfinished_exam(Record& record, std::int64_t learner) {
    auto row =
        find_exams(record.database(),
                   "finished_ms = 0 AND EXISTS (SELECT * FROM exam_item WHERE exam_item.exam "
                   "= exam.id) ORDER BY started_ms DESC LIMIT 1");
    if (!row)
        return tl::make_unexpected(row.error());
    return first_exam(record.database(), row->with(learner));
}

Recorded<std::optional<Exam>> exam_by_id(Record& record, std::int64_t learner, std::int64_t id) {
    auto row = find_exams(record.database(), "id = ?");
    if (!row)
        return tl::make_unexpected(row.error());
    return first_exam(record.database(), row->with(learner, id));
}

Recorded<std::vector<ExamResult>> finished_exams(Record& record, std::int64_t learner, int most) {
    auto rows = record.database().prepare(
        "SELECT id, title, finished_ms, used_ms, right_answers, questions, pass_share FROM exam "
        "WHERE learner = ? AND finished_ms <> 0 ORDER BY finished_ms DESC LIMIT ?");
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::vector<ExamResult> results;
    return rows->with(learner, most)
        .for_each_row([&](const Statement& row) {
            const int of = count_in(row, 5);
            results.push_back({row.integer(0), setup::short_text(row.text(1)), row.integer(2),
                               row.integer(3), std::min(static_cast<int>(row.integer(4)), of), of,
                               pass_mark(share_in(row, 6), of)});
        })
        .map([&] { return std::move(results); });
}

Recorded<Standing> close_exam(Record& record, std::int64_t learner, const Course& course,
                              Exam& exam, const ExamReport& report, const Clock& clock) {
    auto transaction = record.begin();
    Database& database = record.database();
    if (!transaction)
        return tl::make_unexpected(transaction.error());
    if (const auto kept = write_exam(database, learner, exam).and_then([&] {
            return write_items(database, exam);
        });
        !kept)
        return tl::make_unexpected(kept.error());
    auto close =
        database.prepare("UPDATE exam SET finished_ms = ?, right_answers = ?, questions = ? "
                         "WHERE id = ? AND finished_ms = 0");
    if (!close)
        return tl::make_unexpected(close.error());
    if (const auto done = close->with(exam.finished_ms, report.right, report.of, exam.id).run();
        !done)
        return tl::make_unexpected(done.error());
    // Another window closed it first: its answers count.
    const bool closed_here = database.changes() == 1;
    auto standing =
        fold_in(database, learner, course,
                closed_here ? answers_of(course, exam, report) : std::vector<Answer>(), clock);
    if (!standing)
        return standing;
    if (const auto done = transaction->commit(); !done)
        return tl::make_unexpected(done.error());
    return standing;
}

Recorded<void> give_up_exam(Record& record, std::int64_t learner, std::int64_t id) {
    if (const auto done = record.put_back(); !done)
        return done;
    auto remove = record.database().prepare(
        "DELETE FROM exam WHERE learner = ? AND id = ? AND finished_ms = 0");
    if (!remove)
        return tl::make_unexpected(remove.error());
    return remove->with(learner, id).run();
}

} // namespace steelyard::learner
