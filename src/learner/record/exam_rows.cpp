#include "learner/record/exam_rows.h"

#include "learner/record/answer_columns.h"
#include "setup/toml/letters.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::learner {

namespace {

/// The columns in the order in which they are read and bound.
constexpr const char* kExamColumns =
    "title, seed, pass_share, started_ms, allowed_ms, used_ms, seen_ms, item, finished_ms, "
    "right_answers, questions";
constexpr const char* kItemColumns = "code, skill, family, answer, flagged, took_ms, foreseen";

/// Far more than any blueprint asks.
constexpr std::int64_t kMostItems = 100000;

Recorded<void> read_items(Database& database, Exam& exam) {
    auto rows = database.prepare(
        fmt::format("SELECT {} FROM exam_item WHERE exam = ? ORDER BY number", kItemColumns));
    if (!rows)
        return tl::make_unexpected(rows.error());
    return rows->with(exam.id).for_each_row([&](const Statement& row) {
        // Codes and answers are shown as they are, and the file may come from elsewhere.
        exam.items.push_back({setup::one_line(row.text(0)), row.text(1), row.text(2),
                              setup::one_line(row.text(3)), row.integer(4) != 0,
                              std::clamp<std::int64_t>(row.integer(5), 0, kLatest_ms),
                              share_in(row, 6)});
    });
}

} // namespace

int count_in(const Statement& row, int column) {
    return static_cast<int>(std::clamp<std::int64_t>(row.integer(column), 0, kMostItems));
}

double share_in(const Statement& row, int column) {
    const double share = row.number(column);
    return share >= 0.0 ? std::min(share, 1.0) : 0.0;
}

Recorded<Statement> find_exams(Database& database, std::string_view condition) {
    return database.prepare(
        fmt::format("SELECT id, {} FROM exam WHERE learner = ? AND {}", kExamColumns, condition));
}

Recorded<KeptExam> read_exam(Database& database, const Statement& row) {
    KeptExam kept;
    Exam& exam = kept.exam;
    exam.id = row.integer(0);
    exam.title = setup::short_text(row.text(1));
    exam.seed = static_cast<std::uint64_t>(row.integer(2));
    exam.pass_share = share_in(row, 3);
    exam.started_ms = std::clamp(row.integer(4), kEarliest_ms, kLatest_ms);
    exam.allowed_ms = std::clamp<std::int64_t>(row.integer(5), 1, kLongestExam_ms);
    exam.used_ms = std::clamp<std::int64_t>(row.integer(6), 0, exam.allowed_ms);
    exam.seen_ms = std::clamp<std::int64_t>(row.integer(7), 0, kLatest_ms);
    exam.at = static_cast<std::size_t>(count_in(row, 8));
    exam.finished_ms = std::clamp<std::int64_t>(row.integer(9), 0, kLatest_ms);
    exam.finished = exam.finished_ms != 0;
    kept.questions = count_in(row, 11);
    kept.right_answers = std::min(count_in(row, 10), kept.questions);
    return read_items(database, exam).map([&] {
        exam.at = exam.items.empty() ? 0 : std::min(exam.at, exam.items.size() - 1);
        return std::move(kept);
    });
}

Recorded<bool> insert_exam(Database& database, std::int64_t learner, KeptExam& kept) {
    Exam& exam = kept.exam;
    auto insert = database.prepare(
        fmt::format("INSERT INTO exam (learner, {}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON "
                    "CONFLICT (learner, started_ms, seed) DO NOTHING",
                    kExamColumns));
    if (!insert)
        return tl::make_unexpected(insert.error());
    const auto done = insert
                          ->with(learner, exam.title, static_cast<std::int64_t>(exam.seed),
                                 exam.pass_share, exam.started_ms, exam.allowed_ms, exam.used_ms,
                                 exam.seen_ms, static_cast<std::int64_t>(exam.at), exam.finished_ms,
                                 kept.right_answers, kept.questions)
                          .run();
    if (!done)
        return tl::make_unexpected(done.error());
    if (database.changes() != 1)
        return false;
    exam.id = database.last_id();
    return true;
}

Recorded<void> write_items(Database& database, const Exam& exam) {
    auto upsert = database.prepare(
        fmt::format("INSERT INTO exam_item (exam, number, {}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) "
                    "ON CONFLICT (exam, number) DO UPDATE SET code = excluded.code, skill = "
                    "excluded.skill, family = excluded.family, answer = excluded.answer, flagged = "
                    "excluded.flagged, took_ms = excluded.took_ms, foreseen = excluded.foreseen "
                    "WHERE code <> excluded.code OR answer <> excluded.answer OR flagged <> "
                    "excluded.flagged OR took_ms <> excluded.took_ms",
                    kItemColumns));
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

} // namespace steelyard::learner
