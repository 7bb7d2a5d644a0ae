#pragma once
// Where the steps of the staircase lie: prerequisites at the foot, every level a step higher and
// further to the right.

#include "learner/model/staircase.h"
#include "scene/drawing.h"

#include <vector>

namespace steelyard::app {

struct Step {
    std::size_t stair = 0; ///< index into the stairs
    scene::Point corner_px = scene::Point::Zero();
    scene::Point size_px = scene::Point::Zero();
};

/// Lays the stairs into an area. Steps of a level stand side by side, in rows of as many as fit.
/// @param least_px  least width of a step; the last row is at the foot
/// @return the steps, and the height that they take in all, which may be more than the area's
struct StairLayout {
    std::vector<Step> steps;
    double height_px = 0.0;
};
StairLayout lay_stairs(const std::vector<learner::Stair>& stairs, const scene::Point& size_px,
                       double least_px, double step_height_px);

/// The step above, below or beside another one, by arrow; the same where there is none.
/// @param right  1 or -1 along the level, @param up 1 or -1 to another level
std::size_t neighbour(const StairLayout& layout, std::size_t step, int right, int up);

} // namespace steelyard::app
