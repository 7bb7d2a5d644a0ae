#pragma once
// A lever that is a limb, drawn as one around its line: the limb itself, and a stump of what it is
// joined to.

#include "mechanics/lever/lever.h"
#include "scene/marks/label_board.h"
#include "setup/lever/limb_shape.h"

#include <vector>

namespace steelyard::scene {

/// Appends a limb along corners on the sheet, and the lever's line; words keep off both. What would
/// lie beyond the sheet is cut off.
/// @param corners_px  of the lever, two or more
void add_limb(const setup::Limb& limb, const std::vector<Point>& corners_px, const Point& sheet_px,
              LabelBoard& board, std::vector<Shape>& shapes);

/// Two corners of what a limb and its stump take, seen with y up [m]; of a limb much longer than
/// the lever only what lies beside the lever.
std::vector<mechanics::Vec2> limb_reach(const setup::Limb& limb,
                                        const std::vector<mechanics::Vec2>& path_m);

} // namespace steelyard::scene
