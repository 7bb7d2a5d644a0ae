#pragma once
// Lengths on a drawing, marked as draughtsmen do: a line with a small head at each end beside what
// it measures, thin lines from its ends to the points, the length above it.

#include "scene/drawing.h"
#include "scene/marks/label_board.h"

#include <string>
#include <vector>

namespace steelyard::scene {

/// Distance between neighbouring shelves, at 100 % of the text's size.
inline constexpr double kShelf_px = 27.0;

/// A length between two points of the sheet.
struct DimensionLine {
    Point from = Point::Zero();
    Point to = Point::Zero();
    std::string text;
    Role role = Role::quiet_ink;
    Role words_role = Role::ink;
};

/// How lengths are marked.
struct DimensionStyle {
    double first_shelf_px = 66.0; ///< distance of the first shelf from what is measured
    double text_scale = 1.0;      ///< of the board
    double line_px = 1.2;         ///< width of the measuring line
    bool thin_lines = true;       ///< off where they would cross what stands between
};

/// Appends the marks, the shortest nearest to the lever, each on a shelf of its own; a shelf is
/// shared where lengths do not overlap.
void add_dimension_marks(std::vector<DimensionLine> dimensions, const DimensionStyle& style,
                         LabelBoard& board, std::vector<Shape>& shapes);

} // namespace steelyard::scene
