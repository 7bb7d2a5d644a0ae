#include "learner/record/exchange/answer_json.h"
#include "learner/record/exchange/csv_reader.h"
#include "learner/record/exchange/exam_json.h"
#include "learner/record/exchange/import_lines.h"
#include "learner/record/record_rows.h"
#include "learner/record/schema.h"
#include "setup/toml/letters.h"

#include <fmt/format.h>

#include <istream>

namespace steelyard::learner {

namespace {

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
    /// Of what was found in a line [letters].
    static constexpr std::size_t kMostShown = 200;

    RecordError wrong(int line, const std::string& found, const std::string& expected) const {
        return {Trouble::refused,
                fmt::format("{}, line {}: found {}, expected {}. Nothing was imported.",
                            setup::one_line(file_), line, setup::short_text(found, kMostShown),
                            expected)};
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
        imported_.read += {1, answer.attempt == 1 ? 1 : 0};
        if (const auto done = insert_answer(insert, learner_, answer); !done)
            return done;
        imported_.added += record_.database().changes();
        if (progress_ && imported_.read.lines % kProgressEvery == 0)
            progress_(imported_.read.lines);
        return {};
    }

    Recorded<void> read_json_lines(const std::string& as);
    Recorded<void> read_object(const Json& object, const std::string& as, Statement& insert,
                               int line);
    Recorded<void> read_head(const Json& head, const std::string& as);
    Recorded<void> read_exam(const Json& object, int line);
    Recorded<void> read_csv(const std::string& as);
    Recorded<Answer> answer_of(const std::vector<const AnswerColumn*>& columns,
                               const std::vector<std::string>& cells, int line) const;

    Record& record_;
    const Course& course_;
    std::istream& in_;
    const std::string& file_;
    const Clock& clock_;
    const Progress& progress_;
    std::int64_t learner_ = 0;
    Imported imported_;
};

Recorded<void> Import::read_head(const Json& head, const std::string& as) {
    const auto version = whole_of(member_of(head, "steelyard_record"));
    const auto ours = static_cast<std::int64_t>(schema_steps().size());
    if (!version || *version < 1 || *version > ours)
        return tl::make_unexpected(
            wrong(1,
                  version ? fmt::format("version {} of the record", *version)
                          : std::string("no version of the record"),
                  fmt::format("1 to {}; a later Steelyard may have written it", ours)));
    const std::string name = words_of(member_of(head, "learner")).value_or("");
    if (const auto chosen = choose(as.empty() ? name : as); !chosen)
        return chosen;
    // An exam date that is set here stays.
    const auto day = read_day(words_of(member_of(head, "exam_day")).value_or(""));
    const auto learner = record_.learner_named(imported_.learner);
    if (day && learner && *learner && !(*learner)->exam_day)
        return record_.set_exam_day(learner_, *day);
    return {};
}

Recorded<void> Import::read_object(const Json& object, const std::string& as, Statement& insert,
                                   int line) {
    // Its first member says what a line is.
    const bool says = object.is_object() && !object.empty();
    const std::string kind = says ? object.begin().key() : "";
    const std::string found = says ? fmt::format("\"{}\"", kind) : "no JSON object";
    if (learner_ == 0 && kind != "steelyard_record")
        return tl::make_unexpected(
            wrong(line, found, "a first line that begins {\"steelyard_record\":"));
    if (kind == "steelyard_record")
        return read_head(object, as);
    if (kind == "exam")
        return read_exam(object.front(), line);
    if (kind != "answer")
        return tl::make_unexpected(wrong(line, found, "{\"answer\": or {\"exam\":"));
    const auto answer = answer_from(object.front());
    if (!answer)
        return tl::make_unexpected(wrong(line, answer.error(), "an answer as it is exported"));
    return keep(*answer, insert, line);
}

Recorded<void> Import::read_json_lines(const std::string& as) {
    auto insert = prepare_insert(record_.database());
    if (!insert)
        return tl::make_unexpected(insert.error());
    std::string text;
    for (int line = 1; in_.peek() != std::istream::traits_type::eof(); ++line) {
        if (!read_line(in_, text))
            return tl::make_unexpected(
                wrong(line, fmt::format("a line of more than {} bytes", kLongestLine),
                      "lines as they are exported"));
        if (text.find_first_not_of(" \t\r") == std::string::npos)
            continue;
        const Json object = Json::parse(text, nullptr, false);
        if (const auto done = read_object(object, as, *insert, line); !done)
            return done;
    }
    return {};
}

Recorded<void> Import::read_exam(const Json& object, int line) {
    auto kept = exam_from(object);
    if (!kept)
        return tl::make_unexpected(wrong(line, kept.error(), "an exam as it is exported"));
    const auto added = insert_exam(record_.database(), learner_, *kept);
    if (!added)
        return tl::make_unexpected(added.error());
    if (!*added)
        return {};
    ++imported_.exams;
    return write_items(record_.database(), kept->exam);
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
    if (!insert)
        return tl::make_unexpected(insert.error());
    while (true) {
        const auto row = reader.row();
        if (!row)
            return tl::make_unexpected(wrong(reader.line(), row.error(), "RFC 4180"));
        if (!*row)
            return {};
        const auto answer = answer_of(*columns, **row, reader.line());
        if (!answer)
            return tl::make_unexpected(answer.error());
        if (const auto done = keep(*answer, *insert, reader.line()); !done)
            return done;
    }
}

Recorded<Answer> Import::answer_of(const std::vector<const AnswerColumn*>& columns,
                                   const std::vector<std::string>& cells, int line) const {
    if (cells.size() != columns.size())
        return tl::make_unexpected(
            wrong(line, fmt::format("{} cells", cells.size()), fmt::format("{}", columns.size())));
    Answer answer;
    for (std::size_t i = 0; i < cells.size(); ++i)
        if (const auto fault = take_cell(*columns[i], cells[i], answer))
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
