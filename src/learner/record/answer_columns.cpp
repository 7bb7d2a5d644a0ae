#include "learner/record/answer_columns.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <set>

namespace steelyard::learner {

namespace {

/// The members of every row joined by ", ".
template <typename Part> std::string listed(const Part& part) {
    std::string text;
    for (const AnswerColumn& column : answer_table())
        text += (text.empty() ? "" : ", ") + part(column);
    return text;
}

std::int64_t kept(const MomentColumn& column, const Answer& answer) {
    return answer.*column.member;
}
const std::string& kept(const WordsColumn& column, const Answer& answer) {
    return answer.*column.member;
}
int kept(const CountColumn& column, const Answer& answer) {
    return answer.*column.member;
}
std::int64_t kept(const SpanColumn& column, const Answer& answer) {
    return answer.*column.member;
}
double kept(const ShareColumn& column, const Answer& answer) {
    return answer.*column.member;
}
std::string_view kept(const PurposeColumn& column, const Answer& answer) {
    return name_of(answer.*column.member);
}
std::string_view kept(const OutcomeColumn& column, const Answer& answer) {
    return name_of(answer.*column.member);
}

void take(const MomentColumn& column, const Statement& row, int i, Answer& answer) {
    answer.*column.member = std::clamp(row.integer(i), kEarliest_ms, kLatest_ms);
}
void take(const WordsColumn& column, const Statement& row, int i, Answer& answer) {
    answer.*column.member = row.text(i);
}
void take(const CountColumn& column, const Statement& row, int i, Answer& answer) {
    constexpr std::int64_t kMost = std::numeric_limits<int>::max();
    answer.*column.member =
        static_cast<int>(std::clamp<std::int64_t>(row.integer(i), column.least, kMost));
}
void take(const SpanColumn& column, const Statement& row, int i, Answer& answer) {
    answer.*column.member = std::clamp<std::int64_t>(row.integer(i), 0, kLatest_ms);
}
void take(const ShareColumn& column, const Statement& row, int i, Answer& answer) {
    const double share = row.number(i);
    answer.*column.member = share >= 0.0 ? std::min(share, column.most) : 0.0;
}
void take(const PurposeColumn& column, const Statement& row, int i, Answer& answer) {
    answer.*column.member = purpose_named(row.text(i)).value_or(Purpose::practice);
}
void take(const OutcomeColumn& column, const Statement& row, int i, Answer& answer) {
    answer.*column.member = outcome_named(row.text(i)).value_or(Outcome::skipped);
}

struct SqlType {
    std::string_view operator()(const MomentColumn&) const { return "INTEGER"; }
    std::string_view operator()(const WordsColumn&) const { return "TEXT"; }
    std::string_view operator()(const CountColumn&) const { return "INTEGER"; }
    std::string_view operator()(const SpanColumn&) const { return "INTEGER"; }
    std::string_view operator()(const ShareColumn&) const { return "REAL"; }
    std::string_view operator()(const PurposeColumn&) const { return "TEXT"; }
    std::string_view operator()(const OutcomeColumn&) const { return "TEXT"; }
};

std::string sql_literal(std::string_view words) {
    return fmt::format("'{}'", words);
}
template <typename Number> std::string sql_literal(Number number) {
    return fmt::format("{}", number);
}

/// What a new answer has in a column, in SQL.
std::string default_of(const AnswerColumn& column) {
    return std::visit([](const auto& kind) { return sql_literal(kept(kind, Answer{})); },
                      column.kind);
}

} // namespace

const std::vector<AnswerColumn>& answer_table() {
    using A = Answer;
    constexpr auto kNever = Absent::never;
    constexpr auto kDefault = Absent::is_default;
    static const std::vector<AnswerColumn> kTable{
        {"at_ms", "at", MomentColumn{&A::at_ms}, kNever, 1},
        {"code", "code", WordsColumn{&A::code, false}, kNever, 1},
        {"skill", "skill", WordsColumn{&A::skill, false}, kNever, 1},
        {"family", "family", WordsColumn{&A::family, false}, kNever, 1},
        {"purpose", "purpose", PurposeColumn{&A::purpose}, kDefault, 1},
        {"outcome", "outcome", OutcomeColumn{&A::outcome}, kNever, 1},
        {"typed", "typed", WordsColumn{&A::typed, true}, kDefault, 1},
        {"wrong_rule", "wrong_rule", WordsColumn{&A::wrong_rule, true}, kDefault, 1},
        {"attempt", "attempt", CountColumn{&A::attempt, 1}, kDefault, 1},
        {"hints", "hints", CountColumn{&A::hints, 0}, kDefault, 1},
        {"help", "help", ShareColumn{&A::help, 1.0}, kDefault, 1},
        // Without these two an answer would move what is thought of the learner by a guess of ours.
        {"guess", "guess", ShareColumn{&A::guess, kHighestGuess}, kNever, 1},
        {"foreseen", "foreseen", ShareColumn{&A::foreseen, 1.0}, kNever, 1},
        {"took_ms", "took_ms", SpanColumn{&A::took_ms}, kDefault, 1},
    };
    return kTable;
}

const std::string& answer_names() {
    static const std::string kNames =
        listed([](const AnswerColumn& column) { return std::string(column.name); });
    return kNames;
}

const std::string& answer_places() {
    static const std::string kPlaces = listed([](const AnswerColumn&) { return std::string("?"); });
    return kPlaces;
}

Recorded<std::string> answer_selection(Database& file) {
    auto rows = file.prepare("SELECT name FROM pragma_table_info('answer')");
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::set<std::string, std::less<>> there;
    if (const auto read =
            rows->for_each_row([&](const Statement& row) { there.insert(row.text(0)); });
        !read)
        return tl::make_unexpected(read.error());
    for (const AnswerColumn& column : answer_table())
        if (column.absent == Absent::never && there.count(column.name) == 0)
            return tl::make_unexpected(RecordError{
                Trouble::refused, fmt::format("The record {} keeps no {} of its answers.",
                                              file.path().string(), column.name)});
    return listed([&](const AnswerColumn& column) {
        return there.count(column.name) != 0 ? std::string(column.name) : default_of(column);
    });
}

std::string added_answer_columns(int version) {
    std::string sql;
    for (const AnswerColumn& column : answer_table())
        if (column.since == version && version > 1)
            sql += fmt::format("ALTER TABLE answer ADD COLUMN {} {} NOT NULL DEFAULT {};\n",
                               column.name, std::visit(SqlType{}, column.kind), default_of(column));
    return sql;
}

Answer read_answer(const Statement& row) {
    Answer answer;
    int i = 0;
    for (const AnswerColumn& column : answer_table()) {
        if (!row.is_null(i))
            std::visit([&](const auto& kind) { take(kind, row, i, answer); }, column.kind);
        ++i;
    }
    return answer;
}

void bind_answer(Statement& statement, const Answer& answer) {
    for (const AnswerColumn& column : answer_table())
        std::visit([&](const auto& kind) { statement.also(kept(kind, answer)); }, column.kind);
}

} // namespace steelyard::learner
