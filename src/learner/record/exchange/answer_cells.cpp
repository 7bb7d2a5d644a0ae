#include "learner/record/exchange/answer_cells.h"

#include "learner/record/exchange/moment_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <fast_float/fast_float.h>

namespace steelyard::learner {

namespace {

using MaybeFault = std::optional<Fault>;

/// Words of a cell: the apostrophe that keeps spreadsheets from computing them is no part of them.
std::string words_in(const std::string& cell) {
    const bool guarded = cell.size() > 1 && cell.front() == '\'' &&
                         std::string_view("=+-@").find(cell[1]) != std::string_view::npos;
    return guarded ? cell.substr(1) : cell;
}

Cell number_cell(const std::string& text) {
    return {text, true};
}

/// Puts an answer's value into a cell.
struct ToCell {
    const Answer& answer;

    Cell operator()(const MomentColumn& column) const {
        return {write_moment(answer.*column.member), false};
    }
    Cell operator()(const WordsColumn& column) const { return {answer.*column.member, false}; }
    Cell operator()(const CountColumn& column) const {
        return number_cell(fmt::format("{}", answer.*column.member));
    }
    Cell operator()(const SpanColumn& column) const {
        return number_cell(fmt::format("{}", answer.*column.member));
    }
    Cell operator()(const ShareColumn& column) const {
        return number_cell(fmt::format("{}", answer.*column.member));
    }
    Cell operator()(const PurposeColumn& column) const {
        return {std::string(name_of(answer.*column.member)), false};
    }
    Cell operator()(const OutcomeColumn& column) const {
        return {std::string(name_of(answer.*column.member)), false};
    }
};

/// Reads a cell into an answer.
struct FromCell {
    std::string_view heading;
    const std::string& cell;
    Answer& answer;

    MaybeFault no_number() const {
        return fmt::format("a time or number that cannot be read: {} \"{}\"", heading, cell);
    }

    template <typename T> MaybeFault take_whole(T& value) const {
        const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
        if (error != std::errc() || end != cell.data() + cell.size())
            return no_number();
        return std::nullopt;
    }

    MaybeFault operator()(const MomentColumn& column) const {
        const auto read = read_moment(cell);
        if (!read)
            return no_number();
        answer.*column.member = *read;
        return std::nullopt;
    }
    MaybeFault operator()(const WordsColumn& column) const {
        answer.*column.member = words_in(cell);
        return std::nullopt;
    }
    MaybeFault operator()(const CountColumn& column) const {
        return take_whole(answer.*column.member);
    }
    MaybeFault operator()(const SpanColumn& column) const {
        return take_whole(answer.*column.member);
    }
    MaybeFault operator()(const ShareColumn& column) const {
        const char* end = cell.data() + cell.size();
        const auto read = fast_float::from_chars(cell.data(), end, answer.*column.member);
        return read.ec == std::errc() && read.ptr == end ? MaybeFault() : no_number();
    }
    MaybeFault operator()(const PurposeColumn& column) const {
        const auto known = purpose_named(cell);
        answer.*column.member = known.value_or(Purpose::practice);
        return known ? MaybeFault() : no_purpose(cell);
    }
    MaybeFault operator()(const OutcomeColumn& column) const {
        const auto known = outcome_named(cell);
        answer.*column.member = known.value_or(Outcome::skipped);
        return known ? MaybeFault() : no_outcome(cell);
    }
};

/// Looks at a value of an answer.
struct ValueFault {
    std::string_view name;
    const Answer& answer;

    MaybeFault operator()(const MomentColumn& column) const {
        const TimeMs at_ms = answer.*column.member;
        if (at_ms < kEarliest_ms || at_ms > kLatest_ms)
            return "a time that is not between the years 2000 and 2200";
        return std::nullopt;
    }
    MaybeFault operator()(const WordsColumn& column) const {
        const std::string& words = answer.*column.member;
        if (words.empty() && !column.may_be_empty)
            return fmt::format("an answer without {}", name);
        if (words.size() > kLongestText)
            return fmt::format("a text that is far too long for {}", name);
        return std::nullopt;
    }
    MaybeFault operator()(const CountColumn& column) const {
        if (answer.*column.member < column.least)
            return fmt::format("{} below {}", name, column.least);
        return std::nullopt;
    }
    MaybeFault operator()(const SpanColumn& column) const {
        if (answer.*column.member < 0)
            return fmt::format("{} below 0", name);
        return std::nullopt;
    }
    MaybeFault operator()(const ShareColumn& column) const {
        const double share = answer.*column.member;
        if (share >= 0.0 && share <= column.most)
            return std::nullopt;
        return fmt::format("{} that is no number from 0 to {}", name, column.most);
    }
    MaybeFault operator()(const PurposeColumn&) const { return std::nullopt; }
    MaybeFault operator()(const OutcomeColumn&) const { return std::nullopt; }
};

} // namespace

Fault no_purpose(const std::string& word) {
    return fmt::format("the purpose \"{}\"; there are placement, practice, quick and exam", word);
}

Fault no_outcome(const std::string& word) {
    return fmt::format("the outcome \"{}\"; there are right, wrong, gave_up, skipped and example",
                       word);
}

const std::vector<std::string_view>& answer_columns() {
    static const std::vector<std::string_view> kHeadings = [] {
        std::vector<std::string_view> headings;
        for (const AnswerColumn& column : answer_table())
            headings.push_back(column.heading);
        return headings;
    }();
    return kHeadings;
}

std::vector<Cell> cells_of(const Answer& answer) {
    std::vector<Cell> cells;
    for (const AnswerColumn& column : answer_table())
        cells.push_back(std::visit(ToCell{answer}, column.kind));
    return cells;
}

tl::expected<std::vector<const AnswerColumn*>, Fault>
columns_headed(const std::vector<std::string>& headings) {
    std::vector<const AnswerColumn*> columns;
    const auto has = [&](const AnswerColumn& column) {
        return std::find(columns.begin(), columns.end(), &column) != columns.end();
    };
    const std::vector<AnswerColumn>& table = answer_table();
    for (const std::string& heading : headings) {
        const auto found =
            std::find_if(table.begin(), table.end(),
                         [&](const AnswerColumn& column) { return column.heading == heading; });
        if (found == table.end())
            return tl::make_unexpected(fmt::format("a first row with \"{}\"", heading));
        if (has(*found))
            return tl::make_unexpected(fmt::format("\"{}\" twice in the first row", heading));
        columns.push_back(&*found);
    }
    for (const AnswerColumn& column : table)
        if (column.absent == Absent::never && !has(column))
            return tl::make_unexpected(fmt::format("a first row without \"{}\"", column.heading));
    return columns;
}

MaybeFault take_cell(const AnswerColumn& column, const std::string& cell, Answer& answer) {
    return std::visit(FromCell{column.heading, cell, answer}, column.kind);
}

MaybeFault fault_of(const Answer& answer) {
    for (const AnswerColumn& column : answer_table())
        if (auto fault = std::visit(ValueFault{column.name, answer}, column.kind))
            return fault;
    return std::nullopt;
}

} // namespace steelyard::learner
