#include "learner/model/parameters.h"

#include "setup/toml/toml_reader.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <variant>
#include <vector>

namespace steelyard::learner {

namespace {

using setup::Need;
using setup::TomlReader;

/// A key of the file, the parameter that it sets and the values that this may have.
struct Key {
    std::string_view name;
    std::variant<double Parameters::*, int Parameters::*> sets;
    double low;
    double high;
};

struct Section {
    std::string_view name;
    std::vector<Key> keys;
};

using P = Parameters;

const std::vector<Section>& sections() {
    static const std::vector<Section> all{
        {"mastery",
         {{"start", &P::start, 0.0, 0.9},
          {"learn", &P::learn, 0.0, 1.0},
          // Above a half, a wrong answer would speak for knowing, and a right one against it.
          {"slip", &P::slip, 0.001, 0.45},
          {"guess_typed", &P::guess_typed, 0.001, 0.45},
          {"mastered", &P::mastered, 0.5, 0.999}}},
        {"forgetting",
         {{"half_life_days", &P::half_life_d, 0.1, 1000.0},
          {"longest_half_life_days", &P::longest_half_life_d, 0.1, 10000.0},
          {"placed_half_life_days", &P::placed_half_life_d, 0.1, 10000.0}}},
        {"review",
         {{"gap_share", &P::gap_share, 0.01, 1.0},
          {"shortest_gap_days", &P::shortest_gap_d, 0.01, 365.0},
          {"longest_gap_days", &P::longest_gap_d, 0.01, 365.0},
          {"days_without_exam", &P::days_without_exam, 1.0, 3650.0},
          {"keeps_until_exam", &P::keeps_until_exam, 0.0, 1.0}}},
        {"teaching",
         {{"opens_above", &P::opens_above, 0.0, 1.0},
          {"plain_above", &P::plain_above, 0.0, 1.0},
          {"block", &P::block, 1, 20},
          {"learning_at_once", &P::learning_at_once, 1, 100},
          {"plan_most_per_day", &P::plan_most_per_day, 1, 1000}}},
        {"placement",
         {{"questions", &P::placement_questions, 1, 12},
          {"enough", &P::placement_enough, 0.0, 10.0}}},
        {"readiness", {{"confidence", &P::confidence, 0.5, 0.99}}}};
    return all;
}

void read_key(TomlReader& table, const Key& key, Parameters& parameters) {
    if (const auto* whole = std::get_if<int P::*>(&key.sets)) {
        if (const auto number =
                table.integer(key.name, Need::required, static_cast<std::int64_t>(key.low),
                              static_cast<std::int64_t>(key.high)))
            parameters.*(*whole) = static_cast<int>(*number);
        return;
    }
    const auto number = table.number(key.name, Need::required);
    if (!number)
        return;
    if (std::isfinite(*number) && *number >= key.low && *number <= key.high)
        parameters.*std::get<double P::*>(key.sets) = *number;
    else
        table.add_error(key.name, fmt::format("{}", *number),
                        fmt::format("a number from {} to {}", key.low, key.high));
}

tl::expected<Parameters, setup::InputError> parameters_of(const setup::TomlDocument& document) {
    setup::InputErrors errors;
    TomlReader top(document, errors);
    Parameters parameters;
    for (const Section& section : sections()) {
        std::optional<TomlReader> table = top.table(section.name, Need::required);
        if (!table)
            continue;
        for (const Key& key : section.keys)
            read_key(*table, key, parameters);
        table->finish();
    }
    if (parameters.longest_gap_d < parameters.shortest_gap_d)
        top.add_error("review", fmt::format("longest_gap_days = {}", parameters.longest_gap_d),
                      "no less than shortest_gap_days");
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
