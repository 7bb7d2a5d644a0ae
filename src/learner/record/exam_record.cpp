#include "learner/record/exam_record.h"

#include "learner/record/record_rows.h"

#include <algorithm>

namespace steelyard::learner {

namespace {

constexpr const char* kFindExam =
    "SELECT id, title, seed, pass_share, started_ms, allowed_ms, used_ms, seen_ms, item, "
    "finished_ms FROM exam WHERE learner = ? AND ";

/// Far more than any blueprint asks.
constexpr std::int64_t kMostItems = 100000;

/// Of a row that may have been damaged: no share is infinite.
double pass_share_of(const Statement& row, int column) {
    const double share = row.number(column);
    return share >= 0.0 ? std::min(share, 1.0) : 0.0;
}

Recorded<void> read_items(Database& database, Exam& exam) {
    auto rows = database.prepare("SELECT code, skill, family, answer, flagged, took_ms, foreseen "
                                 "FROM exam_item WHERE exam = ? ORDER BY number");
    if (!rows)
        return tl::make_unexpected(rows.error());
    return rows->with(exam.id).for_each_row([&](const Statement& row) {
        exam.items.push_back({row.text(0), row.text(1), row.text(2), row.text(3),
                              row.integer(4) != 0, row.integer(5),
                              std::clamp(row.number(6), 0.0, 1.0)});
    });
}

Recorded<std::optional<Exam>> read_exam(Database& database, Statement& row) {
    const auto found = row.row();
    if (!found)
        return tl::make_unexpected(found.error());
    if (!*found)
        return std::nullopt;
    Exam exam;
    exam.id = row.integer(0);
    exam.title = row.text(1);
    exam.seed = static_cast<std::uint64_t>(row.integer(2));
    exam.pass_share = pass_share_of(row, 3);
    exam.started_ms = row.integer(4);
    exam.allowed_ms = row.integer(5);
    exam.used_ms = row.integer(6);
    exam.seen_ms = row.integer(7);
    exam.at = static_cast<std::size_t>(row.integer(8));
    exam.finished_ms = row.integer(9);
    exam.finished = exam.finished_ms != 0;
    return read_items(database, exam).map([&] {
        // Rows may be missing from a file that was damaged: what is left goes on at its last item.
        exam.at = exam.items.empty() ? 0 : std::min(exam.at, exam.items.size() - 1);
        return std::optional(std::move(exam));
    });
}

Recorded<void> write_exam(Database& database, std::int64_t learner, Exam& exam) {
    if (exam.id == 0) {
        auto insert = database.prepare(
            "INSERT INTO exam (learner, title, seed, pass_share, started_ms, allowed_ms, used_ms, "
            "seen_ms, item) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
        if (!insert)
            return tl::make_unexpected(insert.error());
        if (const auto done =
                insert
                    ->with(learner, exam.title, static_cast<std::int64_t>(exam.seed),
                           exam.pass_share, exam.started_ms, exam.allowed_ms, exam.used_ms,
                           exam.seen_ms, static_cast<std::int64_t>(exam.at))
                    .run();
            !done)
            return done;
        exam.id = database.last_id();
        return {};
    }
    auto update =
        database.prepare("UPDATE exam SET used_ms = ?, seen_ms = ?, item = ? WHERE id = ?");
    if (!update)
        return tl::make_unexpected(update.error());
    return update->with(exam.used_ms, exam.seen_ms, static_cast<std::int64_t>(exam.at), exam.id)
        .run();
}

Recorded<void> write_items(Database& database, const Exam& exam) {
    auto upsert = database.prepare(
        "INSERT INTO exam_item (exam, number, code, skill, family, answer, flagged, took_ms, "
        "foreseen) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (exam, number) DO UPDATE SET "
        "code = excluded.code, skill = excluded.skill, family = excluded.family, answer = "
        "excluded.answer, flagged = excluded.flagged, took_ms = excluded.took_ms, foreseen = "
        "excluded.foreseen WHERE code <> excluded.code OR answer <> excluded.answer OR flagged <> "
        "excluded.flagged OR took_ms <> "
        "excluded.took_ms");
    if (!upsert)
        return tl::make_unexpected(upsert.error());
    for (std::size_t i = 0; i < exam.items.size(); ++i) {
        const ExamItem& item = exam.items[i];
        if (const auto done =
                upsert
                    ->with(exam.id, static_cast<std::int64_t>(i), item.code, item.skill,
                           item.family, item.answer, item.come_back, item.took_ms, item.foreseen)
                    .run();
            !done)
            return done;
    }
    // Numbers have gaps where rows were lost.
    auto remove = database.prepare("DELETE FROM exam_item WHERE exam = ? AND number >= ?");
    if (!remove)
        return tl::make_unexpected(remove.error());
    return remove->with(exam.id, static_cast<std::int64_t>(exam.items.size())).run();
}

Recorded<Statement> find_exam(Database& database, const char* condition) {
    return database.prepare(std::string(kFindExam) + condition);
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
    auto row = find_exam(record.database(),
                         "finished_ms = 0 AND EXISTS (SELECT * FROM exam_item WHERE exam_item.exam "
                         "= exam.id) ORDER BY started_ms DESC LIMIT 1");
    if (!row)
        return tl::make_unexpected(row.error());
    return read_exam(record.database(), row->with(learner));
}

Recorded<std::optional<Exam>> exam_by_id(Record& record, std::int64_t learner, std::int64_t id) {
    auto row = find_exam(record.database(), "id = ?");
    if (!row)
        return tl::make_unexpected(row.error());
    return read_exam(record.database(), row->with(learner, id));
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
            const int of =
                static_cast<int>(std::clamp<std::int64_t>(row.integer(5), 0, kMostItems));
            results.push_back({row.integer(0), row.text(1), row.integer(2), row.integer(3),
                               std::min(static_cast<int>(row.integer(4)), of), of,
                               pass_mark(pass_share_of(row, 6), of)});
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
