#pragma once
// What the reader and the writer of levers share.

#include <fmt/core.h>

#include <cstddef>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// Written in place of a load's size that is to be found.
inline constexpr std::string_view kSought = "sought";

/// Under which a part of a corner is noted: 0 is x, 1 is y.
inline std::string corner_key(std::size_t corner, std::size_t part) {
    return fmt::format("path[{}].{}", corner, part == 0 ? "x" : "y");
}

} // namespace steelyard::setup
