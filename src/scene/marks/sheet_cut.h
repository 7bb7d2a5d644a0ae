#pragma once
// Cuts what is drawn to a window of the sheet, so that an enlarged drawing stays within its own.

#include "scene/marks/label_board.h"

#include <cstddef>
#include <vector>

namespace steelyard::scene {

/// What of a ring lies within a window, cut edges included.
Ring cut_ring(Ring ring, const Rect& window);

/// Cuts the shapes from an index on to a window: lines and filled forms end at its edge; a disc
/// stays where its centre lies within. Words are left as they are.
void cut_to(const Rect& window, std::size_t from, std::vector<Shape>& shapes);

} // namespace steelyard::scene
