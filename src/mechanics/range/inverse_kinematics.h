#pragma once
// Inverse kinematics: which joint angles bring points of the body to places.

#include "mechanics/body/pose.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <tl/expected.hpp>

#include <vector>

namespace steelyard::mechanics {

/// A hinge that may turn to reach the goal.
struct FreeHinge {
    Hinge hinge = Hinge::right_elbow_flexion;
    bool with_mirror = false; ///< its mirror image turns by the same angle
    Interval range_rad;       ///< where its angle may lie [rad]; must hold the present angle
};

/// What is to be reached.
struct ReachGoal {
    BodyPoint point;              ///< of the body
    Vec3 target_m = Vec3::Zero(); ///< where it should come to [m]
    /// Unit vector along which a miss does not count: with the direction of sight the goal lies
    /// anywhere behind one point of the sheet. Zero: the miss counts in every direction.
    Vec3 unseen = Vec3::Zero();
    /// Unit vector along which alone a miss counts, such as up for a height. Zero: see above.
    Vec3 only = Vec3::Zero();

    ReachGoal() = default;
    ReachGoal(const BodyPoint& of, const Vec3& to_m, const Vec3& sight = Vec3::Zero())
        : point(of), target_m(to_m), unseen(sight) {}
};

struct ReachedPose {
    Pose pose;
    double miss_m = 0.0; ///< distance to the target that is left, as far as it counts [m]; with
                         ///< several goals the root of the sum of their squares
};

/// A miss below this is none [m]: a hundredth of a millimetre is far below a pixel.
inline constexpr double kReached_m = 1.0e-5;

/// Turns the free hinges from a pose until the point is at the target, or as near to it as their
/// ranges let it come. From the pose the nearest way is taken, so that a target that moves little
/// moves the pose little; only where that way ends in a dead point (a straight limb pulled along
/// itself) and not at the end of a range, a second way from the middle of the ranges is tried.
/// The other hinges and the anchor stay as they are.
/// @return the pose, or an error for a point that the body does not have ("point") and a hinge
///         whose range does not hold its angle ("hinges[1].range")
/// Source: damped least squares, Wampler 1986, IEEE Trans Syst Man Cybern 16:93, and Nakamura &
/// Hanafusa 1986, J Dyn Sys Meas Control 108:163 (both from memory); damping as by Marquardt, a
/// hinge that presses against the end of its range is left out of the step.
tl::expected<ReachedPose, MechanicsError> reach_point(const Body& body, const Pose& pose,
                                                      const ReachGoal& goal,
                                                      const std::vector<FreeHinge>& hinges);

/// The same for several points at once: the angles change as little as the goals allow, and where
/// that way ends in a dead point, a second one from slightly bent limbs is tried. Where the goals
/// contradict each other, their squares are smallest together.
/// @return the pose, or an error as for one point; keys of points start with "goals[1]."
tl::expected<ReachedPose, MechanicsError> reach_points(const Body& body, const Pose& pose,
                                                       const std::vector<ReachGoal>& goals,
                                                       const std::vector<FreeHinge>& hinges);

} // namespace steelyard::mechanics
