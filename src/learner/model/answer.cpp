#include "learner/model/answer.h"

#include "learner/model/parameters.h"
#include "problems/bank/family.h"
#include "problems/question/question.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace steelyard::learner {

namespace {

using problems::Kind;

constexpr std::array<std::pair<Purpose, std::string_view>, 4> kPurposes{{
    {Purpose::placement, "placement"},
    {Purpose::practice, "practice"},
    {Purpose::quick, "quick"},
    {Purpose::exam, "exam"},
}};

constexpr std::array<std::pair<Outcome, std::string_view>, 5> kOutcomes{{
    {Outcome::right, "right"},
    {Outcome::wrong, "wrong"},
    {Outcome::gave_up, "gave_up"},
    {Outcome::skipped, "skipped"},
    {Outcome::example, "example"},
}};

template <typename Table, typename Value>
std::string_view name_in(const Table& table, Value value) {
    const auto found = std::find_if(table.begin(), table.end(),
                                    [&](const auto& entry) { return entry.first == value; });
    return found->second;
}

template <typename Value, std::size_t N>
std::optional<Value> named_in(const std::array<std::pair<Value, std::string_view>, N>& table,
                              std::string_view name) {
    for (const auto& [value, word] : table)
        if (word == name)
            return value;
    return std::nullopt;
}

double one_of(std::size_t options) {
    return 1.0 / static_cast<double>(std::max<std::size_t>(options, 2));
}
/// Any of them may fit.
double any_of(std::size_t options) {
    return std::exp2(-static_cast<double>(std::max<std::size_t>(options, 2)));
}
double order_of(std::size_t options) {
    return 1.0 / std::tgamma(static_cast<double>(std::max<std::size_t>(options, 2)) + 1.0);
}

/// Up, down, the same.
constexpr std::size_t kWaysToChange = 3;

} // namespace

bool Answer::is_evidence() const {
    return attempt == 1 && outcome != Outcome::skipped && outcome != Outcome::example;
}

std::string_view name_of(Purpose purpose) {
    return name_in(kPurposes, purpose);
}

std::string_view name_of(Outcome outcome) {
    return name_in(kOutcomes, outcome);
}

std::optional<Purpose> purpose_named(std::string_view name) {
    return named_in(kPurposes, name);
}

std::optional<Outcome> outcome_named(std::string_view name) {
    return named_in(kOutcomes, name);
}

double guess_rate(const problems::Question& question, const Parameters& parameters) {
    return std::visit(
        problems::Cases{
            [&](const problems::NumberWanted&) { return parameters.guess_typed; },
            [](const problems::ChoiceWanted& one) { return one_of(one.choices.size()); },
            [](const problems::SeveralWanted& several) { return any_of(several.choices.size()); },
            [](const problems::OrderWanted& order) { return order_of(order.choices.size()); },
            [](const problems::PlaceWanted& place) { return one_of(place.spots.size()); },
            [](const problems::ChangeWanted&) { return one_of(kWaysToChange); },
        },
        question.wanted);
}

double guess_rate(const problems::Family& family, const Parameters& parameters) {
    const auto rate = [&](std::size_t choices) {
        switch (family.kind) {
        case Kind::numeric:
            break;
        case Kind::single_choice:
            return one_of(choices);
        case Kind::several_choices:
            return any_of(choices);
        case Kind::ordering:
            return order_of(choices);
        case Kind::place:
            return one_of(family.place->spots.size());
        case Kind::change:
            return one_of(kWaysToChange);
        }
        return parameters.guess_typed;
    };
    if (family.items.empty())
        return rate(family.choices.size());
    double sum = 0.0;
    for (const problems::Item& item : family.items)
        sum += rate(item.choices.size());
    return sum / static_cast<double>(family.items.size());
}

Answer answer_to(const problems::Question& question, const Parameters& parameters) {
    Answer answer;
    answer.code = question.code;
    answer.skill = question.skill;
    answer.family = question.family;
    answer.guess = guess_rate(question, parameters);
    return answer;
}

} // namespace steelyard::learner
