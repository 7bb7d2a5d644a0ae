#include "learner/record/answer_cells.h"
#include "learner/record/csv_reader.h"
#include "learner/record/import_lines.h"
#include "learner/record/record_rows.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <istream>

namespace steelyard::learner {

namespace {

/// A week: longer than any blueprint allows.
constexpr std::int64_t kLongestExam_ms = 7 * kDay_ms;

class Import {
public:
    Import(Record& record, const Course& course, std::istream& in, const std::string& file,
           const Clock& clock, const Progress& progress)
        : record_(record), course_(course), in_(in), file_(file), clock_(clock),
          progress_(progress) {}

    Recorded<Imported> run(const std::string& as) {
        auto transaction = record_.begin();
        if (!transaction)
            return tl::make_unexpected(transaction.error());
        skip_mark();
        const bool json = in_.peek() == '{';
        const auto read = json ? read_json_lines(as) : read_csv(as);
        if (!read)
            return tl::make_unexpected(read.error());
        const auto placed = put_in_order(record_.database()).and_then([&] {
            return refold(record_.database(), learner_, course_, clock_).map([](const Standing&) {
            });
        });
        if (!placed)
            return tl::make_unexpected(placed.error());
        if (const auto done = transaction->commit(); !done)
            return tl::make_unexpected(done.error());
        return imported_;
    }

private:
    RecordError wrong(int line, const std::string& found, const std::string& expected) const {
        return {Trouble::refused,
                fmt::format("{}, line {}: found {}, expected {}. Nothing was imported.", file_,
                            line, found, expected)};
    }

    /// A byte order mark, which spreadsheets like to write.
    void skip_mark() {
        if (in_.peek() == 0xEF)
            in_.ignore(3);
    }

    Recorded<void> choose(const std::string& name) {
        auto found = record_.learner_named(name);
        if (!found)
            return tl::make_unexpected(found.error());
        if (!*found) {
            auto added = record_.add_learner(name, clock_);
            if (!added)
                return tl::make_unexpected(added.error());
            *found = *added;
        }
        learner_ = (*found)->id;
        imported_.learner = (*found)->name;
        return {};
    }

    Recorded<void> keep(const Answer& answer, Statement& insert, int line) {
        if (const auto fault = fault_of(answer))
            return tl::make_unexpected(wrong(line, *fault, "an answer as it is exported"));
        ++imported_.read;
        if (const auto done = insert_answer(insert, learner_, answer); !done)
            return done;
        imported_.added += record_.database().changes();
        if (progress_ && imported_.read % kProgressEvery == 0)
            progress_(imported_.read);
        return {};
    }

    Recorded<void> read_json_lines(const std::string& as);
    Recorded<void> read_head(const std::string& text, const std::string& as);
    Recorded<void> read_exam(const std::string& text, int line);
    Recorded<Answer> answer_of(Statement& members, const std::string& text, int line) const;
    Recorded<void> read_csv(const std::string& as);
    Recorded<Answer> answer_of(const std::vector<const AnswerColumn*>& columns,
                               const std::vector<std::string>& cells, Statement& number,
                               int line) const;

    Record& record_;
    const Course& course_;
    std::istream& in_;
    const std::string& file_;
    const Clock& clock_;
    const Progress& progress_;
    std::int64_t learner_ = 0;
    Imported imported_;
};

/// What a line is: "answer", "exam", "steelyard_record", another key, or "" where it is no object.
constexpr const char* kKindOfJson =
    "SELECT CASE WHEN json_valid(?1) AND json_type(?1) = 'object' THEN coalesce((SELECT key FROM "
    "json_each(?1) LIMIT 1), '') ELSE '' END";

Recorded<void> Import::read_head(const std::string& text, const std::string& as) {
    auto head = record_.database().prepare(
        "SELECT ?1 ->> '$.steelyard_record', ?1 ->> '$.learner', ?1 ->> '$.exam_day'");
    if (!head)
        return tl::make_unexpected(head.error());
    if (const auto found = head->with(text).row(); !found)
        return tl::make_unexpected(found.error());
    const auto ours = static_cast<std::int64_t>(schema_steps().size());
    if (!head->is_integer(0) || head->integer(0) < 1 || head->integer(0) > ours)
        return tl::make_unexpected(
            wrong(1, fmt::format("version {} of the record", head->text(0)),
                  fmt::format("1 to {}; a later Steelyard may have written it", ours)));
    if (const auto chosen = choose(as.empty() ? head->text(1) : as); !chosen)
        return chosen;
    // An exam date that is set here stays.
    const auto day = read_day(head->text(2));
    const auto learner = record_.learner_named(imported_.learner);
    if (day && learner && *learner && !(*learner)->exam_day)
        return record_.set_exam_day(learner_, *day);
    return {};
}

Recorded<void> Import::read_json_lines(const std::string& as) {
    Database& database = record_.database();
    auto kind = database.prepare(kKindOfJson);
    auto members = database.prepare("SELECT " + answer_from_json("$.answer"));
    auto insert = prepare_insert(database);
    if (!kind || !members || !insert)
        return tl::make_unexpected(!kind      ? kind.error()
                                   : !members ? members.error()
                                              : insert.error());
    std::string text;
    for (int line = 1; in_.peek() != std::istream::traits_type::eof(); ++line) {
        if (!read_line(in_, text))
            return tl::make_unexpected(
                wrong(line, fmt::format("a line of more than {} bytes", kLongestLine),
                      "lines as they are exported"));
        if (text.find_first_not_of(" \t\r") == std::string::npos)
            continue;
        if (const auto read = kind->with(text).row(); !read)
            return tl::make_unexpected(read.error());
        const std::string key = kind->text(0);
        Recorded<void> done;
        if (learner_ == 0 && key != "steelyard_record")
            return tl::make_unexpected(
                wrong(line, key.empty() ? "no JSON object" : fmt::format("\"{}\"", key),
                      "a first line that begins {\"steelyard_record\":"));
        if (key == "steelyard_record") {
            done = read_head(text, as);
        } else if (key == "exam") {
            done = read_exam(text, line);
        } else if (key == "answer") {
            const auto answer = answer_of(*members, text, line);
            if (!answer)
                return tl::make_unexpected(answer.error());
            done = keep(*answer, *insert, line);
        } else {
            return tl::make_unexpected(
                wrong(line, key.empty() ? "no JSON object" : fmt::format("\"{}\"", key),
                      "{\"answer\": or {\"exam\":"));
        }
        if (!done)
            return done;
    }
    return {};
}

Recorded<Answer> Import::answer_of(Statement& members, const std::string& text, int line) const {
    if (const auto read = members.with(text).row(); !read)
        return tl::make_unexpected(read.error());
    if (const auto fault = fault_of_members(members))
        return tl::make_unexpected(wrong(line, *fault, "an answer as it is exported"));
    return read_answer_unbounded(members);
}

Recorded<void> Import::read_exam(const std::string& text, int line) {
    Database& database = record_.database();
    auto exam = database.prepare(
        "INSERT OR IGNORE INTO exam (learner, title, seed, pass_share, started_ms, allowed_ms, "
        "used_ms, seen_ms, item, finished_ms, right_answers, questions) SELECT ?2, e ->> "
        "'$.title', e ->> '$.seed', e ->> '$.pass_share', e ->> '$.started_ms', e ->> "
        "'$.allowed_ms', e ->> '$.used_ms', e ->> '$.seen_ms', e ->> '$.item', e ->> "
        "'$.finished_ms', e ->> '$.right_answers', e ->> '$.questions' FROM (SELECT ?1 -> "
        "'$.exam' AS e) WHERE typeof(e ->> '$.title') = 'text' AND e ->> '$.pass_share' BETWEEN 0 "
        "AND 1 AND json_type(e, '$.items') = 'array' AND NOT EXISTS (SELECT * FROM json_each("
        "'[\"seed\", \"started_ms\", \"allowed_ms\", \"used_ms\", \"seen_ms\", \"item\", "
        "\"finished_ms\", \"right_answers\", \"questions\"]') AS key WHERE json_type(e, '$.' || "
        "key.value) IS NOT 'integer') AND e ->> '$.started_ms' BETWEEN ?3 AND ?4 AND e ->> "
        "'$.allowed_ms' BETWEEN 1 AND ?5 AND e ->> '$.used_ms' BETWEEN 0 AND e ->> '$.allowed_ms' "
        "AND e ->> '$.seen_ms' BETWEEN 0 AND ?4 AND e ->> '$.finished_ms' BETWEEN 0 AND ?4 AND e "
        "->> '$.item' BETWEEN 0 AND json_array_length(e, '$.items') - 1 AND e ->> '$.questions' "
        "BETWEEN 0 AND json_array_length(e, '$.items') AND e ->> '$.right_answers' BETWEEN 0 AND "
        "e ->> '$.questions'");
    // Earlier exports called "come_back" "flagged".
    auto items = database.prepare(
        "INSERT INTO exam_item (exam, number, code, skill, family, answer, flagged, took_ms, "
        "foreseen) SELECT ?2, key, value ->> '$.code', value ->> '$.skill', value ->> '$.family', "
        "value ->> '$.answer', coalesce(value ->> '$.come_back', value ->> '$.flagged'), value ->> "
        "'$.took_ms', value ->> '$.foreseen' FROM json_each(?1, '$.exam.items') WHERE value ->> "
        "'$.code' <> '' AND "
        "typeof(value ->> '$.answer') = 'text' AND json_type(value, '$.took_ms') = 'integer' AND "
        "value ->> '$.took_ms' >= 0 AND value ->> '$.foreseen' BETWEEN 0 AND 1");
    auto count = database.prepare("SELECT json_array_length(?1, '$.exam.items')");
    auto known = database.prepare("SELECT count(*) FROM exam WHERE learner = ?2 AND started_ms = "
                                  "?1 ->> '$.exam.started_ms' AND seed = ?1 ->> '$.exam.seed'");
    for (const auto* statement : {&exam, &items, &known, &count})
        if (!*statement)
            return tl::make_unexpected(statement->error());
    if (const auto done =
            exam->with(text, learner_, kEarliest_ms, kLatest_ms, kLongestExam_ms).run();
        !done)
        return done;
    if (database.changes() == 1) {
        ++imported_.exams;
        const auto counted = count->with(text).row();
        if (counted && items->with(text, database.last_id()).run() &&
            database.changes() == count->integer(0))
            return {};
        return tl::make_unexpected(wrong(line,
                                         "an exam whose items have missing or impossible members",
                                         "an exam as it is exported"));
    }
    const auto found = known->with(text, learner_).row();
    if (!found)
        return tl::make_unexpected(found.error());
    if (known->integer(0) == 1)
        return {};
    return tl::make_unexpected(
        wrong(line, "an exam with missing or impossible members", "an exam as it is exported"));
}

Recorded<void> Import::read_csv(const std::string& as) {
    CsvReader reader(in_);
    const auto head = reader.row();
    const auto columns = columns_headed(head && *head ? **head : std::vector<std::string>());
    if (!columns)
        return tl::make_unexpected(
            wrong(1, columns.error(),
                  fmt::format("JSON Lines, or the columns {}; a later Steelyard may have more",
                              fmt::join(answer_columns(), ","))));
    if (as.empty())
        return tl::make_unexpected(RecordError{
            Trouble::unnamed,
            fmt::format("{} does not say whose answers it holds. Name the learner.", file_)});
    if (const auto chosen = choose(as); !chosen)
        return chosen;
    auto insert = prepare_insert(record_.database());
    auto number = record_.database().prepare("SELECT CAST(? AS REAL)");
    if (!insert || !number)
        return tl::make_unexpected(!insert ? insert.error() : number.error());
    while (true) {
        const auto row = reader.row();
        if (!row)
            return tl::make_unexpected(wrong(reader.line(), row.error(), "RFC 4180"));
        if (!*row)
            return {};
        const auto answer = answer_of(*columns, **row, *number, reader.line());
        if (!answer)
            return tl::make_unexpected(answer.error());
        if (const auto done = keep(*answer, *insert, reader.line()); !done)
            return done;
    }
}

Recorded<Answer> Import::answer_of(const std::vector<const AnswerColumn*>& columns,
                                   const std::vector<std::string>& cells, Statement& number,
                                   int line) const {
    if (cells.size() != columns.size())
        return tl::make_unexpected(
            wrong(line, fmt::format("{} cells", cells.size()), fmt::format("{}", columns.size())));
    Answer answer;
    for (std::size_t i = 0; i < cells.size(); ++i)
        if (const auto fault = take_cell(*columns[i], cells[i], number, answer))
            return tl::make_unexpected(wrong(line, *fault, "a row as it is exported"));
    return answer;
}

} // namespace

Recorded<Imported> import_answers(Record& record, const Course& course, std::istream& in,
                                  const std::string& file, const std::string& as,
                                  const Clock& clock, const Progress& progress) {
    return Import(record, course, in, file, clock, progress).run(as);
}

} // namespace steelyard::learner
