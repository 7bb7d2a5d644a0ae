#pragma once
// Names of the body in files. A hinge or segment may be named without its side: "elbow_flexion"
// then means both elbows.

#include "mechanics/body/solve_body.h"
#include "setup/toml/toml_reader.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// A name without "right_" or "left_".
std::string_view without_side(std::string_view name);

/// The hinges that a name means: one, or the right and the left one; empty when unknown.
std::vector<mechanics::Hinge> hinges_named(std::string_view name);

/// Every name that hinges_named knows.
std::vector<std::string_view> all_hinge_names();

/// A segment by its full name, as a key's text.
std::optional<mechanics::Segment> read_segment(TomlReader& table, std::string_view key, Need need);

/// A hand by its side, "right" or "left".
std::optional<mechanics::Segment> read_hand(TomlReader& table, std::string_view key, Need need);
std::string_view side_of_hand(mechanics::Segment hand);

/// Names of an enumeration that mechanics can name, for choices.
std::vector<std::string_view> spot_names();
std::vector<std::string_view> patch_names();
std::vector<std::string_view> table_part_names();

} // namespace steelyard::setup
