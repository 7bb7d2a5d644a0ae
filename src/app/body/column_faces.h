#pragma once
// The two faces of the body's column: what the exercise asks of the joints, and how it is made.

#include "app/widgets/column_pen.h"

namespace steelyard::app {

enum class ColumnFace {
    readings, ///< what each joint holds
    make,     ///< whose body, what carries it, what it carries, how it moves
};

/// What the foot of either face plays.
struct FacePlay {
    bool moves = false; ///< false: the exercise is held, and nothing can be played
    bool playing = false;
};

/// Begins the area of the column, with room for the button at its foot where something moves.
void begin_face(const Style& style, const Layout& layout, bool moves);

/// Ends it.
/// @return true in the frame in which playing was to begin or to stop
bool end_face(const Style& style, const Layout& layout, const FacePlay& play, ColumnPen& pen);

/// Draws both names at the head of the column and moves the pen below them.
/// @return the face in force from now on
ColumnFace draw_column_faces(const Style& style, const Layout& layout, ColumnFace face,
                             ColumnPen& pen);

} // namespace steelyard::app
