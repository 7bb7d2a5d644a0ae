#pragma once
// The axis of a joint in space, and the plane in which the limb turns about it.

#include "scene/body/body_stage.h"
#include "scene/marks/label_board.h"

#include <vector>

namespace steelyard::scene {

/// Appends the axis as a rod through the joint with the circle about it that lies in the plane of
/// motion; nothing where the view looks along the axis, which is then the joint's mark itself.
void add_axis_rod(const mechanics::Placement& placement, mechanics::Hinge hinge,
                  const BodyStage& stage, const Rect& room, std::vector<Shape>& shapes);

} // namespace steelyard::scene
