#include "learner/record/exchange/answer_json.h"
#include "learner/record/exchange/exam_json.h"
#include "learner/record/record_rows.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

namespace steelyard::learner {

namespace {

Recorded<void> export_answers(Record& record, const Learner& learner,
                              const std::function<void(const Answer&)>& take,
                              const Progress& progress) {
    auto rows = record.database().prepare(
        fmt::format("SELECT {} FROM answer WHERE learner = ? ORDER BY id", answer_names()));
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::int64_t done = 0;
    return rows->with(learner.id).for_each_row([&](const Statement& row) {
        take(read_answer(row));
        if (++done % kProgressEvery == 0 && progress)
            progress(done);
    });
}

/// As one line. What is no UTF-8, as a damaged file may have it, is replaced.
std::string line_of(const char* kind, Json object) {
    Json line = Json::object();
    line[kind] = std::move(object);
    return line.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Recorded<void> export_exams(Database& database, const Learner& learner,
                            const std::function<void(std::string_view)>& line) {
    auto rows = find_exams(database, "true ORDER BY started_ms");
    if (!rows)
        return tl::make_unexpected(rows.error());
    Recorded<void> read;
    const auto all = rows->with(learner.id).for_each_row([&](const Statement& row) {
        const auto kept = read_exam(database, row);
        if (!kept)
            read = tl::make_unexpected(kept.error());
        else if (!kept->exam.items.empty()) // without items it could not be imported
            line(line_of("exam", json_of(*kept)));
    });
    return read ? all : read;
}

} // namespace

Recorded<void> export_json_lines(Record& record, const Learner& learner,
                                 const std::function<void(std::string_view)>& line,
                                 const Progress& progress) {
    Json head = Json::object();
    head["steelyard_record"] = schema_steps().size();
    head["learner"] = learner.name;
    head["exam_day"] = learner.exam_day ? write_day(*learner.exam_day) : std::string();
    line(head.dump(-1, ' ', false, Json::error_handler_t::replace));
    return export_answers(
               record, learner,
               [&](const Answer& answer) { line(line_of("answer", json_of(answer))); }, progress)
        .and_then([&] { return export_exams(record.database(), learner, line); });
}

Recorded<void> export_rows(Record& record, const Learner& learner,
                           const std::function<void(const std::vector<Cell>&)>& row,
                           const Progress& progress) {
    return export_answers(
        record, learner, [&](const Answer& answer) { row(cells_of(answer)); }, progress);
}

} // namespace steelyard::learner
