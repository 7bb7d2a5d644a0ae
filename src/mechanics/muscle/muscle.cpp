#include "mechanics/muscle/muscle.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

double highest_specific_tension_Pa(AreaMethod method) {
    constexpr double kDissection_Pa = 137.0e4;
    constexpr double kImaging_Pa = 35.0e4;
    return method == AreaMethod::dissection ? kDissection_Pa : kImaging_Pa;
}

bool arm_is_known(const Muscle& muscle, const PosedSide& posed) {
    if (muscle.arms.empty())
        return muscle.line.has_value();
    return std::any_of(muscle.arms.begin(), muscle.arms.end(),
                       [&](const ArmSource& source) { return lies_within(posed, source.holds); });
}

tl::expected<Pull, MechanicsError> pull_at(const Muscle& muscle, double angle_rad,
                                           const std::optional<LineOfPull>& line,
                                           const JointAxis& axis, const PosedSide* posed) {
    if (!std::isfinite(angle_rad))
        return tl::unexpected(MechanicsError{Fault::not_finite, "angle", "a finite joint angle"});
    if (muscle.arms.empty() && !line)
        return tl::unexpected(
            MechanicsError{Fault::inconsistent, muscle.name, "moment arms or a line of pull"});
    Pull pull;
    pull.muscle = muscle.name;
    if (const auto& section = muscle.cross_section) {
        pull.area_m2 = section->area_m2;
        pull.most_N = section->area_m2 * highest_specific_tension_Pa(section->by);
    }
    if (line) {
        auto placed = place_line(*line, axis);
        if (!placed) {
            placed.error().key = muscle.name + "." + placed.error().key;
            return tl::unexpected(placed.error());
        }
        pull.line = *placed;
        pull.convention = std::holds_alternative<FixedAngleLine>(*line)
                              ? PullConvention::fixed_angle
                              : PullConvention::attachment_points;
        pull.arm_m = placed->arm_m;
        pull.arm_range_m = {placed->arm_m, placed->arm_m};
    }
    if (!muscle.arms.empty()) {
        if (auto checked = check_arm_sources(muscle.arms, muscle.name + ".arm"); !checked)
            return tl::unexpected(checked.error());
        const auto reading =
            posed ? arm_in_pose(muscle.arms, angle_rad, *posed) : arm_at(muscle.arms, angle_rad);
        pull.arm_m = reading ? reading->arm_m : 0.0;
        pull.arm_range_m = reading ? reading->range_m : Interval{};
        pull.arm_clamped = reading && reading->clamped;
        if (reading)
            pull.source = reading->source;
    }
    return pull;
}

Pull pull_with_arm(std::string muscle, double arm_m) {
    Pull pull;
    pull.muscle = std::move(muscle);
    pull.arm_m = arm_m;
    pull.arm_range_m = {arm_m, arm_m};
    return pull;
}

Pull pull_along(std::string muscle, const Vec3& insertion_m, const Vec3& direction,
                const FreeBody& body) {
    const double arm_m = (insertion_m - body.axis_m).cross(direction).dot(body.axis_direction);
    Pull pull = pull_with_arm(std::move(muscle), arm_m);
    pull.convention = PullConvention::attachment_points;
    pull.line = PlacedLine{insertion_m, direction, arm_m, 0.0, false};
    return pull;
}

} // namespace steelyard::mechanics
