#pragma once
// Joint actions: a hinge turned one way with the body in one region of poses ("horizontal adduction
// of the shoulder"), and the muscles that anatomy names as its movers.

#include "mechanics/muscle/line_of_pull.h"
#include "mechanics/muscle/moment_arm_curve.h"
#include "mechanics/muscle/strength.h"

#include <string>
#include <vector>

namespace steelyard::mechanics {

/// A hinge turned one way, and who does it.
struct JointAction {
    std::string name;                         ///< without the joint: "horizontal adduction"
    Hinge hinge = Hinge::right_elbow_flexion; ///< of the right side or the middle
    TurnSense turns = TurnSense::positive;
    std::vector<PoseRange> where;    ///< poses in which it is called so
    std::vector<std::string> movers; ///< without any one of them no force is named
    std::vector<std::string> helpers;
    Citation citation;
    std::vector<MeasuredStrength> strength{}; ///< what groups of people could hold in it
};

} // namespace steelyard::mechanics
