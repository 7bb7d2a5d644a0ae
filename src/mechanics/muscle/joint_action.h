#pragma once
// Joint actions: a hinge turned one way with the body in one region of poses ("horizontal adduction
// of the shoulder"), and the muscles that anatomy names as its movers.
//
// A hinge of the shoulder stands for several actions: with the arm hanging its abduction axis runs
// from back to front, with the arm raised forward it stands upright. A moment arm measured in one
// of these planes says nothing about the other.

#include "mechanics/body/pose.h"
#include "mechanics/muscle/line_of_pull.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <string>
#include <vector>

namespace steelyard::mechanics {

/// Angles between which a hinge has to stand, both ends included.
struct PoseRange {
    Hinge hinge = Hinge::right_shoulder_flexion; ///< of the right side or the middle
    Interval angle_rad;
};

/// Whether a pose lies in all of the ranges; none of them holds everywhere.
/// @param mirrored  the left side is meant
bool lies_within(const Pose& pose, const std::vector<PoseRange>& ranges, bool mirrored);

/// A hinge turned one way, and who does it.
struct JointAction {
    std::string name;                         ///< without the joint: "horizontal adduction"
    Hinge hinge = Hinge::right_elbow_flexion; ///< of the right side or the middle
    TurnSense turns = TurnSense::positive;
    std::vector<PoseRange> where;    ///< poses in which it is called so
    std::vector<std::string> movers; ///< without any one of them no force is named
    std::vector<std::string> helpers;
    Citation citation;
};

} // namespace steelyard::mechanics
