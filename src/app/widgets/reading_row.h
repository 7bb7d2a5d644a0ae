#pragma once
// A reading in a column: its name, its number and unit; pressed to unfold how it was computed.

#include "app/widgets/column_pen.h"

#include <string>

namespace steelyard::app {

/// Draws the row and moves the pen below it.
/// @return true in the frame in which it was pressed
/// @param size  of the value where it has room
bool draw_reading_row(const Style& style, const std::string& name, const std::string& value,
                      scene::Role role, ColumnPen& pen,
                      scene::TextSize size = scene::TextSize::reading);

} // namespace steelyard::app
