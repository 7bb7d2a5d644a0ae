#pragma once
// A lever that is a limb, drawn as one around its line: the limb itself, and a stump of what it is
// joined to.

#include "scene/marks/label_board.h"
#include "setup/lever/limb_shape.h"

#include <vector>

namespace steelyard::scene {

/// Appends a limb along corners on the sheet, and its line; words keep off the line.
/// @param corners_px  of the lever, two or more
void add_limb(setup::LimbShape limb, const std::vector<Point>& corners_px, LabelBoard& board,
              std::vector<Shape>& shapes);

} // namespace steelyard::scene
