#pragma once
// The forces on a lever, made ready to be drawn.

#include "scene/lever/lever_drawing.h"
#include "scene/marks/force_marks.h"

#include <string>
#include <vector>

namespace steelyard::scene {

/// One force ready to be drawn.
struct DrawnForce {
    Role role = Role::load;
    Tail tail = Tail::square;
    Stroke stroke;
    mechanics::ForceReading reading; ///< of the lever as set
    mechanics::Vec2 direction =
        mechanics::Vec2::Zero(); ///< unit vector, also for a force without a size
    Point from = Point::Zero();  ///< on the sheet, tilted with the lever
    Point to = Point::Zero();
    bool cut = false;
    std::string size; ///< "118 N", empty when it is not given away
    std::string name;
    bool has_arm = true;
    bool has_line = true;
    bool quiet = false; ///< said in one line of small type
};

/// Every force that the drawing shows: loads, own weight, effort, reaction. What is not given away
/// has no size.
std::vector<DrawnForce> lever_forces(const mechanics::Lever& lever,
                                     const mechanics::LeverResult& solved, const StageView& view,
                                     const LeverDrawing& how);

} // namespace steelyard::scene
