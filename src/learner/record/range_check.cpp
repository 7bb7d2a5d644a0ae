#include "learner/record/range_check.h"

#include "learner/record/answer_columns.h"
#include "learner/record/exam_rows.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <limits>

namespace steelyard::learner {

namespace {

/// A column and the condition, in SQL, that its value is in range.
struct Range {
    std::string column;
    std::string holds;
};

std::string whole_between(std::string_view column, std::int64_t least, std::int64_t most) {
    return fmt::format("typeof({0}) = 'integer' AND {0} BETWEEN {1} AND {2}", column, least, most);
}

std::string share_up_to(std::string_view column, double most) {
    return fmt::format("typeof({0}) IN ('real', 'integer') AND {0} BETWEEN 0 AND {1}", column,
                       most);
}

std::string text_from(std::string_view column, std::size_t least) {
    return fmt::format("typeof({0}) = 'text' AND length(CAST({0} AS BLOB)) BETWEEN {1} AND {2}",
                       column, least, kLongestText);
}

std::string one_of(std::string_view column, const std::vector<std::string_view>& words) {
    return fmt::format("{} IN ('{}')", column, fmt::join(words, "', '"));
}

/// The range of a column of answers, in SQL.
struct RangeOf {
    std::string_view name;

    std::string operator()(const MomentColumn&) const {
        return whole_between(name, kEarliest_ms, kLatest_ms);
    }
    std::string operator()(const WordsColumn& column) const {
        return text_from(name, column.may_be_empty ? 0 : 1);
    }
    std::string operator()(const CountColumn& column) const {
        return whole_between(name, column.least, std::numeric_limits<int>::max());
    }
    std::string operator()(const SpanColumn&) const { return whole_between(name, 0, kLatest_ms); }
    std::string operator()(const ShareColumn& column) const {
        return share_up_to(name, column.most);
    }
    std::string operator()(const PurposeColumn&) const { return one_of(name, names_of_purposes()); }
    std::string operator()(const OutcomeColumn&) const { return one_of(name, names_of_outcomes()); }
};

std::vector<Range> ranges_of_answers() {
    std::vector<Range> ranges;
    for (const AnswerColumn& column : answer_table())
        ranges.push_back({std::string(column.name), std::visit(RangeOf{column.name}, column.kind)});
    return ranges;
}

std::vector<Range> ranges_of_exams() {
    const std::string items = "(SELECT count(*) FROM exam_item WHERE exam_item.exam = exam.id)";
    const auto whole = [](const char* column, std::int64_t least, std::int64_t most) {
        return Range{column, whole_between(column, least, most)};
    };
    return {
        {"title", text_from("title", 0)},
        {"pass_share", share_up_to("pass_share", 1.0)},
        whole("started_ms", kEarliest_ms, kLatest_ms),
        whole("allowed_ms", 1, kLongestExam_ms),
        {"used_ms", "typeof(used_ms) = 'integer' AND used_ms BETWEEN 0 AND allowed_ms"},
        whole("seen_ms", 0, kLatest_ms),
        whole("finished_ms", 0, kLatest_ms),
        {"item", fmt::format("item BETWEEN 0 AND {} - 1", items)},
        {"questions", fmt::format("questions BETWEEN 0 AND {}", items)},
        {"right_answers", "right_answers BETWEEN 0 AND questions"},
    };
}

std::vector<Range> ranges_of_items() {
    return {
        {"code", text_from("code", 1)},
        {"answer", text_from("answer", 0)},
        {"took_ms", whole_between("took_ms", 0, kLatest_ms)},
        {"foreseen", share_up_to("foreseen", 1.0)},
    };
}

/// @param thing  what a row is: "answer"
Recorded<void> look_at(Database& database, const std::string& table, const std::string& thing,
                       const std::vector<Range>& ranges, std::vector<std::string>& faults) {
    std::string sums;
    for (const Range& range : ranges)
        sums += fmt::format("{}total(NOT ifnull({}, 0))", sums.empty() ? "" : ", ", range.holds);
    auto row = database.prepare(fmt::format("SELECT {} FROM {}", sums, table));
    if (!row)
        return tl::make_unexpected(row.error());
    if (const auto read = row->row(); !read)
        return tl::make_unexpected(read.error());
    int column = 0;
    for (const Range& range : ranges)
        if (const std::int64_t beyond = row->integer(column++); beyond > 0)
            faults.push_back(fmt::format("In {} the value of {} is none that can be; it is taken "
                                         "for the nearest one that can.",
                                         words::counted(beyond, thing), range.column));
    return {};
}

} // namespace

Recorded<std::vector<std::string>> values_out_of_range(Database& database) {
    std::vector<std::string> faults;
    return look_at(database, "answer", "answer", ranges_of_answers(), faults)
        .and_then([&] { return look_at(database, "exam", "mock exam", ranges_of_exams(), faults); })
        .and_then([&] {
            return look_at(database, "exam_item", "exam question", ranges_of_items(), faults);
        })
        .map([&] { return std::move(faults); });
}

} // namespace steelyard::learner
