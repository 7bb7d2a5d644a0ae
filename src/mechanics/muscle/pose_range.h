#pragma once
// Regions of poses: where a movement has its name, and where a moment arm was found.
//
// A hinge of the shoulder stands for several movements: with the arm hanging its abduction axis
// runs from back to front, with the arm raised forward it stands upright. A moment arm found in one
// of these planes says nothing about the other.

#include "mechanics/body/pose.h"

#include <vector>

namespace steelyard::mechanics {

/// From-to, both ends included; low <= high.
struct Interval {
    double low = 0.0;
    double high = 0.0;
};

/// Angles between which a hinge has to stand, both ends included.
struct PoseRange {
    Hinge hinge = Hinge::right_shoulder_flexion; ///< of the right side or the middle
    Interval angle_rad;
};

/// A pose, and which side of it is meant: ranges are written for the right side.
struct PosedSide {
    const Pose& pose;
    bool mirrored = false; ///< the left side is meant
};

/// Whether a pose lies in all of the ranges; none of them holds everywhere.
bool lies_within(const PosedSide& posed, const std::vector<PoseRange>& ranges);

} // namespace steelyard::mechanics
