#pragma once
// Directions as people write them: "down", or degrees counter-clockwise from the right.

#include "setup/setup_head.h"

#include <optional>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// Direction of a word: "right", "up", "left", "down" [rad]; empty for any other text.
std::optional<double> direction_of_word(std::string_view word);

/// Reads a direction and takes a note of it [rad, counter-clockwise from +x].
std::optional<double> noted_direction(TomlReader& table, std::string_view key,
                                      const std::string& mechanics_key, SourceNotes& source,
                                      Need need = Need::optional);

/// A direction as the right side of a line of TOML.
std::string written_direction(double direction_rad, std::string_view mechanics_key,
                              const SourceNotes& source);

/// A direction in a sentence: "down", "30° left of down", "45° right of up".
std::string direction_in_words(double direction_rad);

} // namespace steelyard::setup
