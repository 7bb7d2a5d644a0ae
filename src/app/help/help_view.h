#pragma once
// The page of keys, and what the numbers are and are not.

#include "app/look/style.h"
#include "app/platform/window.h"

namespace steelyard::app {

/// Draws the page over the whole window.
/// @param sources  where the data come from, a line each
/// @return true when it is to be closed: Escape, F1 or a click
bool draw_help(const Style& style, const scene::Point& window_px, const std::vector<KeyPress>& keys,
               const std::vector<std::string>& sources);

} // namespace steelyard::app
