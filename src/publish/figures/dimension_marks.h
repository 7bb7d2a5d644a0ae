#pragma once
// Lengths on a drawing, marked as draughtsmen do: a line with a small head at each end beside what
// it measures, thin lines from its ends to the points, the length above it.

#include "scene/drawing.h"
#include "scene/marks/label_board.h"

#include <string>
#include <vector>

namespace steelyard::publish {

/// Distance between neighbouring shelves.
inline constexpr double kShelf_px = 27.0;

/// A length between two points of the sheet.
struct DimensionLine {
    scene::Point from = scene::Point::Zero();
    scene::Point to = scene::Point::Zero();
    std::string text;
};

/// Appends the marks, the shortest nearest to the lever, each on a shelf of its own; a shelf is
/// shared where lengths do not overlap.
/// @param first_shelf_px  distance of the first shelf from what is measured
void add_dimension_marks(std::vector<DimensionLine> dimensions, double first_shelf_px,
                         scene::LabelBoard& board, std::vector<scene::Shape>& shapes);

} // namespace steelyard::publish
