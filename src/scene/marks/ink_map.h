#pragma once
// Where a drawing has ink, so that words find free paper.

#include "scene/drawing.h"

#include <cstdint>
#include <vector>

namespace steelyard::scene {

/// A raster of a drawing's shapes. Ink counts as a whole cell of a few pixels: what is called free
/// is free. Labels are not looked at, nor are lines in the colour of the sheet, which part things.
class InkMap {
public:
    InkMap(const Point& size_px, const std::vector<Shape>& shapes);

    /// Area of the cells with ink that an upright rectangle touches [px²]; 0: nothing lies under
    /// it. What lies beyond the sheet has no ink.
    double ink_px2(const Point& low_px, const Point& high_px) const;

private:
    friend class InkMapper;

    std::size_t columns_;
    std::size_t rows_;
    std::vector<std::uint8_t> cells_; ///< row by row; 1: ink
    std::vector<std::uint32_t> sums_; ///< of the cells above and to the left, with an empty border
};

} // namespace steelyard::scene
