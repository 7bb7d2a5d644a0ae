#pragma once
// How the body holds itself: one angle for each hinge, and one segment fixed in the world.

#include "mechanics/body/body.h"

namespace steelyard::mechanics {

/// The segment whose place in the world is known; all others follow from the joint angles. It does
/// not move during a repetition.
struct Anchor {
    BodyPoint point{Segment::right_foot, Spot::sole, 0.0, Vec3::Zero()};
    Vec3 at_m = Vec3::Zero(); ///< where that point is in the world [m]
    double turn_rad = 0.0; ///< the segment turned about the vertical, positive to the right [rad]
    double lean_rad = 0.0; ///< then leaned forward [rad]; +90 degrees = face down
    double side_lean_rad = 0.0; ///< then leaned to its right [rad]
};

struct Pose {
    PerHinge angle_rad{}; ///< all zero: anatomical position
    Anchor anchor;        ///< default: right foot flat at the origin

    double operator[](Hinge hinge) const { return angle_rad[index_of(hinge)]; }
    double& operator[](Hinge hinge) { return angle_rad[index_of(hinge)]; }
};

/// How fast the hinges turn. All zero: at rest.
struct Motion {
    PerHinge rate_rad_s{};          ///< [rad/s]
    PerHinge acceleration_rad_s2{}; ///< [rad/s²]
};

/// Checks that every angle is finite and within its hinge's range, and that the anchor can be
/// computed with.
/// @return nothing, or the first fault ("pose.right_knee_flexion": "an angle from -10 to 150 deg")
tl::expected<void, MechanicsError> check_pose(const Body& body, const Pose& pose);

/// The same pose with left and right exchanged; the anchor goes to the other side of the plane z=0.
Pose mirrored(const Pose& pose);

} // namespace steelyard::mechanics
