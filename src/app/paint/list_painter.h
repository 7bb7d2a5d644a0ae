#pragma once
// Plain shapes painted among ImGui's own, so that a drawing can stand in a column that scrolls.

#include "app/look/style.h"

namespace steelyard::app {

/// Paints the boxes, straight lines, discs and labels of a drawing; other shapes it must not have.
/// @param offset_px  where the drawing's corner lies on the sheet
void paint_in_list(const std::vector<scene::Shape>& shapes, const scene::Point& offset_px,
                   const Style& style, ImDrawList& list);

} // namespace steelyard::app
