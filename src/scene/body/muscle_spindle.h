#pragma once
// Muscles as they are drawn on a body: spindles whose belly swells with the force.

#include "mechanics/muscle/muscle_on_body.h"
#include "scene/body/body_stage.h"

#include <optional>
#include <vector>

namespace steelyard::scene {

/// A muscle on the sheet: a tendon from the insertion to where the flesh begins, and the flesh,
/// thickest at its belly.
struct Spindle {
    Point insertion = Point::Zero();
    Point over = Point::Zero(); ///< where the flesh begins; the insertion where there is no tendon
    Point belly = Point::Zero();
    Point end = Point::Zero();
    double tendon_px = 1.5; ///< radius
    double belly_px = 2.5;  ///< radius; its square grows with the force
    bool rests = false;     ///< it does not take part, as the antagonists
};

/// Which muscles of a hinge are drawn, and how thick.
struct SpindleStyle {
    bool also_resting = false; ///< those that do not pull, too
    double thicker = 1.0;      ///< bellies, more than usual
};

/// The muscles of a hinge that pull, or all, of which the line of pull is known, those that rest
/// first; none where no force is said.
/// One that turns a limb's bone lies along the bone before it, on the side on which it passes the
/// joint; one that comes from the trunk lies along its pull.
std::vector<Spindle> spindles_of(const mechanics::HingeMuscles& muscles,
                                 const mechanics::Body& body, const mechanics::Placement& placement,
                                 mechanics::Hinge hinge, const BodyStage& stage,
                                 const SpindleStyle& style = {});

/// Appends one, as far as it lies within the flesh and no wider than that leaves it room.
void add_spindle(const Spindle& spindle, const std::vector<Outline>& flesh, Role role,
                 std::vector<Shape>& shapes);

} // namespace steelyard::scene
