#pragma once
// The two faces of the body's column: what the exercise asks of the joints, and how it is made.

#include "app/widgets/column_pen.h"

namespace steelyard::app {

enum class ColumnFace {
    readings, ///< what each joint holds
    make,     ///< whose body, what carries it, what it carries, how it moves
};

/// Draws both names at the head of the column and moves the pen below them.
/// @return the face in force from now on
ColumnFace draw_column_faces(const Style& style, const Layout& layout, ColumnFace face,
                             ColumnPen& pen);

} // namespace steelyard::app
