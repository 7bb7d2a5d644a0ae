#include "learner/record/exchange/answer_json.h"

#include <fmt/format.h>

#include <limits>

namespace steelyard::learner {

namespace {

using MaybeFault = std::optional<Fault>;

struct ToJson {
    const Answer& answer;

    Json operator()(const PurposeColumn& column) const { return name_of(answer.*column.member); }
    Json operator()(const OutcomeColumn& column) const { return name_of(answer.*column.member); }
    template <typename Column> Json operator()(const Column& column) const {
        return answer.*column.member;
    }
};

/// Reads a member that is there into an answer.
struct FromJson {
    std::string_view name;
    const Json& member;
    Answer& answer;

    MaybeFault no(std::string_view what) const { return fmt::format("no {} for {}", what, name); }

    template <typename Whole> MaybeFault take_whole(Whole& value) const {
        const auto read = whole_of(&member);
        if (!read || *read < std::numeric_limits<Whole>::min() ||
            *read > std::numeric_limits<Whole>::max())
            return no("whole number");
        value = static_cast<Whole>(*read);
        return std::nullopt;
    }

    MaybeFault operator()(const MomentColumn& column) const {
        return take_whole(answer.*column.member);
    }
    MaybeFault operator()(const CountColumn& column) const {
        return take_whole(answer.*column.member);
    }
    MaybeFault operator()(const SpanColumn& column) const {
        return take_whole(answer.*column.member);
    }
    MaybeFault operator()(const ShareColumn& column) const {
        const auto read = number_of(&member);
        answer.*column.member = read.value_or(0.0);
        return read ? MaybeFault() : no("number");
    }
    MaybeFault operator()(const WordsColumn& column) const {
        auto read = words_of(&member);
        if (!read)
            return no("text");
        answer.*column.member = std::move(*read);
        return std::nullopt;
    }
    MaybeFault operator()(const PurposeColumn& column) const {
        const std::string word = words_of(&member).value_or("");
        const auto known = purpose_named(word);
        answer.*column.member = known.value_or(Purpose::practice);
        return known ? MaybeFault() : no_purpose(word);
    }
    MaybeFault operator()(const OutcomeColumn& column) const {
        const std::string word = words_of(&member).value_or("");
        const auto known = outcome_named(word);
        answer.*column.member = known.value_or(Outcome::skipped);
        return known ? MaybeFault() : no_outcome(word);
    }
};

} // namespace

const Json* member_of(const Json& object, std::string_view name) {
    const auto found = object.find(std::string(name));
    return found == object.end() || found->is_null() ? nullptr : &*found;
}

std::optional<std::int64_t> whole_of(const Json* member) {
    if (member == nullptr || !member->is_number_integer())
        return std::nullopt;
    constexpr auto kMost = static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
    if (member->is_number_unsigned() && member->get<std::uint64_t>() > kMost)
        return std::nullopt;
    return member->get<std::int64_t>();
}

std::optional<double> number_of(const Json* member) {
    if (member == nullptr || !member->is_number())
        return std::nullopt;
    return member->get<double>();
}

std::optional<std::string> words_of(const Json* member) {
    if (member == nullptr || !member->is_string())
        return std::nullopt;
    return member->get<std::string>();
}

Json json_of(const Answer& answer) {
    Json object = Json::object();
    for (const AnswerColumn& column : answer_table())
        object[std::string(column.name)] = std::visit(ToJson{answer}, column.kind);
    return object;
}

tl::expected<Answer, Fault> answer_from(const Json& object) {
    if (!object.is_object())
        return tl::make_unexpected(Fault("an answer that is no object"));
    Answer answer;
    for (const AnswerColumn& column : answer_table()) {
        const Json* member = member_of(object, column.name);
        if (member == nullptr && column.absent == Absent::is_default)
            continue;
        if (member == nullptr)
            return tl::make_unexpected(fmt::format("an answer without {}", column.name));
        if (auto fault = std::visit(FromJson{column.name, *member, answer}, column.kind))
            return tl::make_unexpected(std::move(*fault));
    }
    return answer;
}

} // namespace steelyard::learner
