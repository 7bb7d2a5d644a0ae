#include "mechanics/muscle/pose_range.h"

#include <algorithm>

namespace steelyard::mechanics {

bool lies_within(const PosedSide& posed, const std::vector<PoseRange>& ranges) {
    constexpr double kRounding_rad = 1e-6; // a path that ends at 90° may end a little past it
    return std::all_of(ranges.begin(), ranges.end(), [&](const PoseRange& range) {
        const Hinge hinge = posed.mirrored ? hinge_info(range.hinge).mirror : range.hinge;
        const double angle_rad = posed.pose[hinge];
        return angle_rad >= range.angle_rad.low - kRounding_rad &&
               angle_rad <= range.angle_rad.high + kRounding_rad;
    });
}

} // namespace steelyard::mechanics
