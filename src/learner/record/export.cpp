#include "learner/record/answer_cells.h"
#include "learner/record/record_rows.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

namespace steelyard::learner {

namespace {

/// Hands out the first column of every row.
Recorded<void> each_text(Statement& rows, const std::function<void(std::string_view)>& line,
                         const Progress& progress) {
    std::int64_t done = 0;
    return rows.for_each_row([&](const Statement& row) {
        line(row.text(0));
        if (++done % kProgressEvery == 0 && progress)
            progress(done);
    });
}

// SQLite itself writes the JSON, so that its quoting is SQLite's.
std::string answer_json() {
    return fmt::format(
        "SELECT json_object('answer', json_object({})) FROM answer WHERE learner = ? "
        "ORDER BY id",
        answer_members());
}

constexpr const char* kExamJson =
    "SELECT json_object('exam', json_object('title', title, 'seed', seed, 'pass_share', "
    "pass_share, 'started_ms', started_ms, 'allowed_ms', allowed_ms, 'used_ms', used_ms, "
    "'seen_ms', seen_ms, 'item', min(item, (SELECT count(*) FROM exam_item WHERE exam = exam.id) - "
    "1), 'finished_ms', finished_ms, 'right_answers', "
    "right_answers, 'questions', questions, 'items', (SELECT json_group_array(json_object('code', "
    "code, 'skill', skill, 'family', family, 'answer', answer, 'come_back', flagged, 'took_ms', "
    "took_ms, 'foreseen', foreseen)) FROM (SELECT * FROM exam_item WHERE exam = exam.id ORDER BY "
    "number)))) FROM exam WHERE learner = ? AND EXISTS (SELECT * FROM exam_item WHERE "
    "exam_item.exam = exam.id) ORDER BY started_ms";

} // namespace

Recorded<void> export_json_lines(Record& record, const Learner& learner,
                                 const std::function<void(std::string_view)>& line,
                                 const Progress& progress) {
    Database& database = record.database();
    auto head = database.prepare("SELECT json_object('steelyard_record', ?, 'learner', name, "
                                 "'exam_day', exam_day) FROM learner WHERE id = ?");
    auto answers = database.prepare(answer_json());
    auto exams = database.prepare(kExamJson);
    if (!head || !answers || !exams)
        return tl::make_unexpected(!head      ? head.error()
                                   : !answers ? answers.error()
                                              : exams.error());
    return each_text(head->with(static_cast<std::int64_t>(schema_steps().size()), learner.id), line,
                     {})
        .and_then([&] { return each_text(answers->with(learner.id), line, progress); })
        .and_then([&] { return each_text(exams->with(learner.id), line, {}); });
}

Recorded<void> export_rows(Record& record, const Learner& learner,
                           const std::function<void(const std::vector<Cell>&)>& row,
                           const Progress& progress) {
    auto rows = record.database().prepare(
        fmt::format("SELECT {} FROM answer WHERE learner = ? ORDER BY id", answer_names()));
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::int64_t done = 0;
    return rows->with(learner.id).for_each_row([&](const Statement& each) {
        row(cells_of(read_answer(each)));
        if (++done % kProgressEvery == 0 && progress)
            progress(done);
    });
}

} // namespace steelyard::learner
