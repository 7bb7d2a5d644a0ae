#include "learner/parameters.h"

#include "setup/toml_reader.h"

#include <fmt/format.h>

#include <cmath>

namespace steelyard::learner {

namespace {

using setup::Need;
using setup::TomlReader;

/// Reads a number that has to lie between two others.
void read_between(TomlReader& table, std::string_view key, double low, double high, double& value) {
    const auto number = table.number(key, Need::required);
    if (!number)
        return;
    if (!std::isfinite(*number) || *number < low || *number > high)
        table.add_error(key, fmt::format("{}", *number),
                        fmt::format("a number from {} to {}", low, high));
    else
        value = *number;
}

void read_between(TomlReader& table, std::string_view key, int low, int high, int& value) {
    if (const auto number = table.integer(key, Need::required, low, high))
        value = static_cast<int>(*number);
}

void read_mastery(TomlReader& table, Parameters& parameters) {
    read_between(table, "start", 0.0, 0.9, parameters.start);
    read_between(table, "learn", 0.0, 1.0, parameters.learn);
    // Above a half, a wrong answer would speak for knowing, and a right one against it.
    read_between(table, "slip", 0.001, 0.45, parameters.slip);
    read_between(table, "guess_typed", 0.001, 0.45, parameters.guess_typed);
    read_between(table, "mastered", 0.5, 0.999, parameters.mastered);
    table.finish();
}

void read_forgetting(TomlReader& table, Parameters& parameters) {
    read_between(table, "half_life_days", 0.1, 1000.0, parameters.half_life_d);
    read_between(table, "longest_half_life_days", 0.1, 10000.0, parameters.longest_half_life_d);
    read_between(table, "placed_half_life_days", 0.1, 10000.0, parameters.placed_half_life_d);
    table.finish();
}

void read_review(TomlReader& table, Parameters& parameters) {
    read_between(table, "gap_share", 0.01, 1.0, parameters.gap_share);
    read_between(table, "shortest_gap_days", 0.01, 365.0, parameters.shortest_gap_d);
    read_between(table, "longest_gap_days", 0.01, 365.0, parameters.longest_gap_d);
    read_between(table, "days_without_exam", 1.0, 3650.0, parameters.days_without_exam);
    read_between(table, "keeps_until_exam", 0.0, 1.0, parameters.keeps_until_exam);
    if (parameters.longest_gap_d < parameters.shortest_gap_d)
        table.add_error("longest_gap_days", fmt::format("{}", parameters.longest_gap_d),
                        "no less than shortest_gap_days");
    table.finish();
}

void read_teaching(TomlReader& table, Parameters& parameters) {
    read_between(table, "opens_above", 0.0, 1.0, parameters.opens_above);
    read_between(table, "plain_above", 0.0, 1.0, parameters.plain_above);
    read_between(table, "block", 1, 20, parameters.block);
    read_between(table, "learning_at_once", 1, 100, parameters.learning_at_once);
    read_between(table, "plan_most_per_day", 1, 1000, parameters.plan_most_per_day);
    table.finish();
}

void read_placement(TomlReader& table, Parameters& parameters) {
    read_between(table, "questions", 1, 12, parameters.placement_questions);
    read_between(table, "enough", 0.0, 10.0, parameters.placement_enough);
    table.finish();
}

void read_readiness(TomlReader& table, Parameters& parameters) {
    read_between(table, "confidence", 0.5, 0.99, parameters.confidence);
    table.finish();
}

tl::expected<Parameters, setup::InputError> parameters_of(const setup::TomlDocument& document) {
    setup::InputErrors errors;
    TomlReader top(document, errors);
    Parameters parameters;
    const auto section = [&](std::string_view name, void (*read)(TomlReader&, Parameters&)) {
        if (auto table = top.table(name, Need::required))
            read(*table, parameters);
    };
    section("mastery", read_mastery);
    section("forgetting", read_forgetting);
    section("review", read_review);
    section("teaching", read_teaching);
    section("placement", read_placement);
    section("readiness", read_readiness);
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(setup::first_of(errors));
    return parameters;
}

} // namespace

tl::expected<Parameters, setup::InputError> parse_parameters(std::string_view text,
                                                             const std::string& file) {
    return setup::parse_toml(text, file).and_then(parameters_of);
}

tl::expected<Parameters, setup::InputError> read_parameters(const std::filesystem::path& path) {
    return setup::read_toml_file(path).and_then(parameters_of);
}

} // namespace steelyard::learner
