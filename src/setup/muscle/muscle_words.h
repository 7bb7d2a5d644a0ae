#pragma once
// What the parts of a muscle file have in common: hinges without a side, the two ways in which a
// joint turns, and where a number comes from.

#include "mechanics/muscle/muscle.h"
#include "setup/toml/toml_reader.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// The words for the two ways in which a joint turns.
struct TurnWords {
    std::string_view positive = "closing"; ///< of the jaw, the one joint that is not a hinge here
    std::string_view negative = "opening";
};
TurnWords turn_words(const std::optional<mechanics::Hinge>& hinge);

/// +1 or -1 by one of the two words.
std::optional<double> read_sign(TomlReader& table, std::string_view key, const TurnWords& words,
                                Need need);
mechanics::TurnSense sense_of(double sign);

/// Files name what the right side and the middle have in common: "forearm", not "right_forearm".
template <typename Named> auto named_without_side(std::string_view name, const Named& named) {
    auto found = named("right_" + std::string(name));
    return found ? found : named(name);
}

template <typename Row> std::vector<std::string_view> names_without_side(const Row& rows) {
    std::vector<std::string_view> names;
    for (const auto& row : rows) {
        if (row.name.substr(0, 5) == "left_")
            continue;
        names.push_back(row.name.substr(0, 6) == "right_" ? row.name.substr(6) : row.name);
    }
    return names;
}

/// The hinge under the key "hinge", of the right side or the middle.
std::optional<mechanics::Hinge> read_hinge_name(TomlReader& table, Need need);

/// Poses under a key: tables with hinge, from and to.
std::vector<mechanics::PoseRange> read_pose_ranges(TomlReader& table, std::string_view key);

/// Two angles under a key, from and to [rad].
mechanics::Interval read_angles(TomlReader& table, std::string_view key);

/// How files spell what a moment arm rests on, in the order of the enumeration.
const std::vector<std::string_view>& basis_names();

/// The keys "source" and "mark".
mechanics::Citation read_citation(TomlReader& table);

} // namespace steelyard::setup
