#pragma once
// The strip of an exam's questions as small numbered squares.

#include "app/look/style.h"

#include <optional>
#include <vector>

namespace steelyard::app {

struct Square {
    bool filled = false;       ///< answered
    bool marked = false;       ///< flagged: a corner
    bool present = false;      ///< on the screen
    std::optional<bool> right; ///< in a report: a tick or a cross beside the colour
};

/// Draws them in the present area, as many to a line as fit.
/// @return which one was pressed
std::optional<std::size_t> draw_squares(const Style& style, ImVec2 at, float width_px,
                                        const std::vector<Square>& squares);

/// Height that so many take [px].
float squares_height(const Style& style, float width_px, std::size_t count);

} // namespace steelyard::app
