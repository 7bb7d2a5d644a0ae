#pragma once
// One force and every joint that could be the axis: its line of action and a moment arm to each.

#include "scene/body/body_stage.h"
#include "scene/marks/force_marks.h"

#include <optional>
#include <vector>

namespace steelyard::scene {

/// A moment arm as it is drawn, and the words on it.
struct BodyArm {
    mechanics::Hinge hinge = mechanics::Hinge::right_elbow_flexion;
    ArmMark mark;
    double arm_m = 0.0;
    bool chosen = false;
    /// The view looks along the arm, so that it is drawn much shorter than it is.
    bool end_on = false;
};

/// The line of action of a force past the body on both sides, and past the feet of all arms.
struct ActionLine {
    Point from = Point::Zero();
    Point to = Point::Zero();
};
std::optional<ActionLine> action_line(const mechanics::BodyForce& force,
                                      const std::vector<mechanics::Hinge>& axes,
                                      const mechanics::BodyResult& result, const BodyStage& stage);

/// The arms of a force to the axes that it loads. Arms that would lie on one another are moved
/// along the line of action, each to a shelf of its own.
/// @param force  index into result.forces
std::vector<BodyArm> body_arms(const mechanics::BodyCase& body_case,
                               const mechanics::BodyResult& result, std::size_t force,
                               const std::vector<mechanics::Hinge>& axes, std::size_t chosen,
                               const BodyStage& stage, double shelf_px);

} // namespace steelyard::scene
