#pragma once
// What people type, brought to plain characters, and the number at its front.

#include "setup/units/units.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// Typed text in plain characters: every kind of blank is ' ', every minus and hyphen '-', every
/// product sign '*', powers "^3", "½" " 1/2", primes ' and ", the degree sign "deg". Blanks at
/// both ends are cut.
std::string normalised(std::string_view typed);

/// A number read from the front of a normalised text.
struct ScannedNumber {
    TypedNumber number;
    std::size_t end = 0; ///< where the rest begins
};

/// Reads the number at `begin` of a normalised text.
tl::expected<ScannedNumber, UnitError> scan_number(std::string_view text, std::size_t begin);

} // namespace steelyard::setup
