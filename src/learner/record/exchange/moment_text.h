#pragma once
// Moments as text in exported files.

#include "learner/time/clock.h"

#include <optional>
#include <string>
#include <string_view>

namespace steelyard::learner {

/// "2026-11-25T18:00:00.000Z" (ISO 8601, UTC).
std::string write_moment(TimeMs at_ms);

/// Reads the same; fractions of a second may be missing.
std::optional<TimeMs> read_moment(std::string_view text);

} // namespace steelyard::learner
