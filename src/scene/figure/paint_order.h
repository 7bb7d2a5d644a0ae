#pragma once
// Which of several rounded parts lies before which.

#include "scene/drawing.h"

#include <vector>

namespace steelyard::scene {

/// A ball of a part: where on the sheet, how large there, and how near the eye its middle is.
struct DepthBall {
    Point at = Point::Zero();
    double radius_px = 0.0;
    double depth_m = 0.0;
};

/// A part by balls along it. Of two that overlap at one depth the later one lies on top.
using DepthBalls = std::vector<DepthBall>;

/// The order in which to paint: far parts first where they overlap on the sheet, and otherwise the
/// one after the other by their mean depth. A ring of parts each before the next is cut at the
/// farthest.
std::vector<std::size_t> paint_order(const std::vector<DepthBalls>& parts);

} // namespace steelyard::scene
