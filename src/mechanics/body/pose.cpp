#include "mechanics/body/pose.h"

#include "mechanics/bounds.h"
#include "mechanics/constants.h"

namespace steelyard::mechanics {

namespace {

/// Rounding of an angle that was typed in degrees must not put it past the end of its range [rad].
constexpr double kAngleRounding_rad = 1.0e-9;

std::string allowed_range(const HingeInfo& hinge) {
    const auto degrees = [](double angle_rad) {
        return std::to_string(std::lround(angle_rad * 180.0 / kPi));
    };
    return "an angle from " + degrees(hinge.least_rad) + " to " + degrees(hinge.most_rad) +
           " degrees (" + std::string(hinge.positive) + " positive)";
}

Found check_anchor(const Body& body, const Anchor& anchor) {
    if (const auto point = local_point(body, anchor.point); !point)
        return within_key("pose.anchor", point.error());
    for (const double part : anchor.at_m)
        if (Found fault = outside(part, -kMaxLength_m, kMaxLength_m, "pose.anchor.at",
                                  "a place within 1000 m of the origin"))
            return fault;
    for (const auto& [angle_rad, key] : {std::pair(anchor.turn_rad, "pose.anchor.turn"),
                                         std::pair(anchor.lean_rad, "pose.anchor.lean"),
                                         std::pair(anchor.side_lean_rad, "pose.anchor.side_lean")})
        if (Found fault =
                outside(angle_rad, -2.0 * kPi, 2.0 * kPi, key, "an angle from -360 to 360 degrees"))
            return fault;
    return std::nullopt;
}

} // namespace

tl::expected<void, MechanicsError> check_pose(const Body& body, const Pose& pose) {
    for (const HingeInfo& hinge : all_hinges()) {
        const double angle_rad = pose[hinge.hinge];
        if (angle_rad >= hinge.least_rad - kAngleRounding_rad &&
            angle_rad <= hinge.most_rad + kAngleRounding_rad)
            continue;
        const Fault fault = std::isfinite(angle_rad) ? Fault::out_of_range : Fault::not_finite;
        return tl::unexpected(
            MechanicsError{fault, "pose." + std::string(hinge.name), allowed_range(hinge)});
    }
    if (Found fault = check_anchor(body, pose.anchor))
        return tl::unexpected(*std::move(fault));
    return {};
}

Pose mirrored(const Pose& pose) {
    Pose other = pose;
    for (const HingeInfo& hinge : all_hinges()) {
        // The middle's side bends and rotations change their side, all else changes its limb.
        const bool turns_over = hinge.mirror == hinge.hinge && hinge.axis != 2;
        other[hinge.mirror] = turns_over ? -pose[hinge.hinge] : pose[hinge.hinge];
    }
    Anchor& anchor = other.anchor;
    anchor.point.segment = segment_info(pose.anchor.point.segment).mirror;
    anchor.point.offset_m.z() = -pose.anchor.point.offset_m.z();
    anchor.at_m.z() = -pose.anchor.at_m.z();
    anchor.turn_rad = -pose.anchor.turn_rad;
    anchor.side_lean_rad = -pose.anchor.side_lean_rad;
    return other;
}

} // namespace steelyard::mechanics
