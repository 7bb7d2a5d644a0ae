#include "learner/record/csv_reader.h"
#include "learner/record/exchange.h"
#include "learner/record/import_lines.h"
#include "learner/record/moment_text.h"
#include "learner/record/record_rows.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <istream>

namespace steelyard::learner {

namespace {

constexpr std::int64_t kProgressEvery = 10000;
/// Times of answers: from 2000 to 2200, which catches seconds taken for milliseconds.
constexpr TimeMs kEarliest_ms = 946684800000;
constexpr TimeMs kLatest_ms = 7258118400000;
constexpr std::size_t kLongestText = 4000;
/// A week: longer than any blueprint allows.
constexpr std::int64_t kLongestExam_ms = 7 * kDay_ms;

/// What is wrong with a line, as a phrase: "no outcome of ours: \"rihgt\"".
using Fault = std::string;

std::optional<Fault> fault_of(const Answer& answer) {
    if (answer.at_ms < kEarliest_ms || answer.at_ms > kLatest_ms)
        return "a time that is not between the years 2000 and 2200";
    if (answer.code.empty() || answer.skill.empty() || answer.family.empty())
        return "an answer without code, skill or family";
    if (std::max({answer.code.size(), answer.skill.size(), answer.family.size(),
                  answer.typed.size(), answer.wrong_rule.size()}) > kLongestText)
        return "a text that is far too long";
    const auto is_chance = [](double chance) { return chance >= 0.0 && chance <= 1.0; };
    if (!is_chance(answer.help) || !is_chance(answer.guess) || !is_chance(answer.foreseen))
        return "help, guess or foreseen that is no number from 0 to 1";
    if (answer.guess >= 0.95)
        return "a guess rate of 0.95 or more, by which no answer says anything";
    if (answer.attempt < 1 || answer.hints < 0 || answer.took_ms < 0)
        return "an attempt below 1, or negative hints or time";
    return std::nullopt;
}

/// Purpose and outcome by their names.
std::optional<Fault> take_names(Answer& answer, const std::string& purpose,
                                const std::string& outcome) {
    const auto known_purpose = purpose_named(purpose);
    const auto known_outcome = outcome_named(outcome);
    if (!known_purpose)
        return fmt::format("the purpose \"{}\"; there are placement, practice, quick and exam",
                           purpose);
    if (!known_outcome)
        return fmt::format(
            "the outcome \"{}\"; there are right, wrong, gave_up, skipped and example", outcome);
    answer.purpose = *known_purpose;
    answer.outcome = *known_outcome;
    return std::nullopt;
}

/// A number that fills a cell.
template <typename T> bool read_whole(const std::string& text, T& value) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc() && end == text.data() + text.size();
}

/// Words of a cell: the apostrophe that keeps spreadsheets from computing them is no part of them.
std::string words_of(const std::string& cell) {
    const bool guarded = cell.size() > 1 && cell.front() == '\'' &&
                         std::string_view("=+-@").find(cell[1]) != std::string_view::npos;
    return guarded ? cell.substr(1) : cell;
}

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
    Recorded<Answer> answer_of(const std::vector<std::string>& cells, Statement& number,
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

/// Paths of an answer's members, in the order of kAnswerColumns.
constexpr const char* kAnswerOfJson =
    "SELECT ?1 ->> '$.answer.at_ms', ?1 ->> '$.answer.code', ?1 ->> '$.answer.skill', "
    "?1 ->> '$.answer.family', ?1 ->> '$.answer.purpose', ?1 ->> '$.answer.outcome', "
    "?1 ->> '$.answer.typed', ?1 ->> '$.answer.wrong_rule', ?1 ->> '$.answer.attempt', "
    "?1 ->> '$.answer.hints', ?1 ->> '$.answer.help', ?1 ->> '$.answer.guess', "
    "?1 ->> '$.answer.foreseen', ?1 ->> '$.answer.took_ms'";

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
    auto members = database.prepare(kAnswerOfJson);
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
    const auto refuse = [&](const char* found) {
        return tl::make_unexpected(wrong(line, found, "an answer as it is exported"));
    };
    for (const int column : {0, 8, 9, 13})
        if (!members.is_integer(column))
            return refuse("no whole number for at_ms, attempt, hints or took_ms");
    for (const int column : {10, 11, 12})
        if (!members.is_number(column))
            return refuse("no number for help, guess or foreseen");
    Answer answer = read_answer(members);
    if (const auto fault = take_names(answer, members.text(4), members.text(5)))
        return tl::make_unexpected(wrong(line, *fault, "one of these"));
    return answer;
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
    const std::vector<std::string_view>& columns = answer_columns();
    if (!head || !*head ||
        !std::equal((*head)->begin(), (*head)->end(), columns.begin(), columns.end()))
        return tl::make_unexpected(
            wrong(1, "another first row",
                  fmt::format("JSON Lines, or the columns {}", fmt::join(columns, ","))));
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
        const auto answer = answer_of(**row, *number, reader.line());
        if (!answer)
            return tl::make_unexpected(answer.error());
        if (const auto done = keep(*answer, *insert, reader.line()); !done)
            return done;
    }
}

Recorded<Answer> Import::answer_of(const std::vector<std::string>& cells, Statement& number,
                                   int line) const {
    if (cells.size() != answer_columns().size())
        return tl::make_unexpected(wrong(line, fmt::format("{} cells", cells.size()),
                                         fmt::format("{}", answer_columns().size())));
    Answer answer;
    const auto at_ms = read_moment(cells[0]);
    answer.at_ms = at_ms.value_or(0);
    answer.code = words_of(cells[1]);
    answer.skill = words_of(cells[2]);
    answer.family = words_of(cells[3]);
    answer.typed = words_of(cells[6]);
    answer.wrong_rule = words_of(cells[7]);
    if (const auto fault = take_names(answer, cells[4], cells[5]))
        return tl::make_unexpected(wrong(line, *fault, "one of these"));
    bool numbers = at_ms && read_whole(cells[8], answer.attempt) &&
                   read_whole(cells[9], answer.hints) && read_whole(cells[13], answer.took_ms);
    const auto read_chance = [&](const std::string& text, double& value) {
        if (text.empty() || text.find_first_not_of("0123456789.eE+-") != std::string::npos)
            return false;
        // SQLite reads the number: exactly, and whatever the machine's language is.
        const auto read = number.with(text).row();
        value = read ? number.number(0) : 0.0;
        return read && *read;
    };
    numbers = numbers && read_chance(cells[10], answer.help) &&
              read_chance(cells[11], answer.guess) && read_chance(cells[12], answer.foreseen);
    if (!numbers)
        return tl::make_unexpected(
            wrong(line, "a time or number that cannot be read", "a row as exported"));
    return answer;
}

} // namespace

Recorded<Imported> import_answers(Record& record, const Course& course, std::istream& in,
                                  const std::string& file, const std::string& as,
                                  const Clock& clock, const Progress& progress) {
    return Import(record, course, in, file, clock, progress).run(as);
}

} // namespace steelyard::learner
