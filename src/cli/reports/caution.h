#pragma once

#include <string_view>

namespace steelyard::cli {

/// Stands below every number about a person's body.
inline constexpr std::string_view kCaution =
    "Educational, not medical advice: estimates for rigid limbs. Pain means stop; defer to local "
    "codes and licensed practitioners.";

} // namespace steelyard::cli
