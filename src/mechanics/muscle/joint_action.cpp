#include "mechanics/muscle/joint_action.h"

#include <algorithm>

namespace steelyard::mechanics {

bool lies_within(const Pose& pose, const std::vector<PoseRange>& ranges, bool mirrored) {
    constexpr double kRounding_rad = 1e-6; // a path that ends at 90° may end a little past it
    return std::all_of(ranges.begin(), ranges.end(), [&](const PoseRange& range) {
        const double angle_rad = pose[mirrored ? hinge_info(range.hinge).mirror : range.hinge];
        return angle_rad >= range.angle_rad.low - kRounding_rad &&
               angle_rad <= range.angle_rad.high + kRounding_rad;
    });
}

} // namespace steelyard::mechanics
