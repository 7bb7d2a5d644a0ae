#pragma once
// A rail with a grip on it: a value dragged between two ends.

#include "app/look/style.h"

#include <optional>
#include <string_view>

namespace steelyard::app {

/// Height of a rail at 100 %: a finger's width.
inline constexpr float kRailHeight = 44.0F;

/// Draws a rail and lets it be dragged, or pressed anywhere along it.
/// @param corner  its top left; it is kRailHeight high
/// @param name    what a reader of the screen calls the grip
/// @param share   where the grip is, 0 to 1 from left to right
/// @return where it is now, in frames in which it is held
std::optional<double> draw_rail(const Style& style, const char* id, ImVec2 corner, float width_px,
                                std::string_view name, double share);

} // namespace steelyard::app
