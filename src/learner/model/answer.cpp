#include "learner/model/answer.h"

#include "learner/model/parameters.h"
#include "problems/bank/answer_kinds.h"
#include "problems/question/question.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace steelyard::learner {

namespace {

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

template <typename Table> std::vector<std::string_view> names_in(const Table& table) {
    std::vector<std::string_view> names;
    for (const auto& entry : table)
        names.push_back(entry.second);
    return names;
}

template <typename Value, std::size_t N>
std::optional<Value> named_in(const std::array<std::pair<Value, std::string_view>, N>& table,
                              std::string_view name) {
    for (const auto& [value, word] : table)
        if (word == name)
            return value;
    return std::nullopt;
}

/// @param options  choices or places
double chance_of_a_guess(problems::Picks picks, std::size_t options, const Parameters& parameters) {
    const double k = static_cast<double>(std::max<std::size_t>(options, 2));
    switch (picks) {
    case problems::Picks::nothing:
        break;
    case problems::Picks::one:
        return 1.0 / k;
    case problems::Picks::any:
        return std::exp2(-k);
    case problems::Picks::all_in_order:
        return 1.0 / std::tgamma(k + 1.0);
    }
    return parameters.guess_typed;
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

std::vector<std::string_view> names_of_purposes() {
    return names_in(kPurposes);
}

std::vector<std::string_view> names_of_outcomes() {
    return names_in(kOutcomes);
}

std::optional<Purpose> purpose_named(std::string_view name) {
    return named_in(kPurposes, name);
}

std::optional<Outcome> outcome_named(std::string_view name) {
    return named_in(kOutcomes, name);
}

double guess_rate(const problems::Question& question, const Parameters& parameters) {
    return chance_of_a_guess(
        problems::row_of(question).picks,
        problems::choices_of(question).size() + problems::spots_of(question).size(), parameters);
}

double guess_rate(const problems::Family& family, const Parameters& parameters) {
    const problems::AnswerKind& kind = problems::row_of(family.kind);
    if (!family.items.empty()) {
        double sum = 0.0;
        for (const problems::Item& item : family.items)
            sum += chance_of_a_guess(kind.picks, item.choices.size(), parameters);
        return sum / static_cast<double>(family.items.size());
    }
    const std::size_t options = kind.has_changes ? kWaysToChange
                                : kind.has_place ? family.place->spots.size()
                                                 : family.choices.size();
    return chance_of_a_guess(kind.picks, options, parameters);
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
