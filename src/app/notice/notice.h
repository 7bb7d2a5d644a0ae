#pragma once
// A sentence to the person that no place of the window has asked for: a file that cannot be read,
// work that cannot be kept.

#include "app/look/style.h"
#include "app/platform/window.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// Draws the sentence at the foot of the window, over whatever is there.
/// @return true when it is to go away: by its word, or by Escape
bool draw_notice(const Style& style, const scene::Point& window_px,
                 const std::vector<KeyPress>& keys, const std::string& sentence);

} // namespace steelyard::app
