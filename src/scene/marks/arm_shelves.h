#pragma once
// Where moment arms are drawn so that they neither lie on the lever nor on each other.

#include "scene/marks/force_marks.h"

#include <vector>

namespace steelyard::scene {

/// A moment arm may stand anywhere along its line of action: it stays the same perpendicular
/// distance. An arm that would lie on the lever is moved off it, to a shelf of its own.
class ArmShelves {
public:
    explicit ArmShelves(const Point& axis) : axis_(axis) {}

    /// @param foot       foot of the perpendicular from the axis on the line of action
    /// @param point      where the force acts
    /// @param along_line unit vector of the pull on the sheet
    ArmMark shelve(const Point& foot, const Point& point, const Point& along_line);

private:
    struct Shelf {
        Point away;      ///< unit vector by which the arm was moved
        Point direction; ///< unit vector from the axis to the foot
        int level;
    };
    Point axis_;
    std::vector<Shelf> shelves_;
};

} // namespace steelyard::scene
