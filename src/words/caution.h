#pragma once
// The usual caution.

namespace steelyard::words {

/// Stands beside every number about a person's body, on every sheet and in every help.
inline constexpr const char* kCaution =
    "Educational, not medical advice. Estimates for rigid levers and limbs. Stop if it hurts. "
    "Local "
    "regulations, your scope of practice and licensed practitioners come first.";

} // namespace steelyard::words
