#pragma once
// Several closed outlines made one.

#include "scene/figure/loft.h"

#include <vector>

namespace steelyard::scene {

/// Twice the area of a ring; positive when it turns from +x to +y.
double doubled_area(const Ring& ring);

/// True when a point lies inside a ring that does not cross itself.
bool is_inside(const Point& point, const Ring& ring);

/// The outline of everything that at least one ring holds: outer rings turn from +x to +y, holes
/// the other way, so that either rule of filling gives the same. Where rings meet in a way that
/// cannot be told apart by numbers, they are given back as they are, which fills alike by the
/// nonzero rule.
/// @param rings  none of them crosses itself; those of fewer than three corners are left out
std::vector<Ring> union_of(std::vector<Ring> rings);

} // namespace steelyard::scene
