#include "mechanics/body/force.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// A force that lies closer to the axis's direction than this part of its size is parallel to it:
/// rounding of a rotation, not a torque [-].
constexpr double kParallel = 1.0e-12;

} // namespace

HingeArm arm_about(const Vec3& axis_point_m, const Vec3& axis, const Vec3& point_m,
                   const Vec3& force_N) {
    HingeArm arm;
    const Vec3 r_m = point_m - axis_point_m;
    const Vec3 in_plane_N = force_N - axis * axis.dot(force_N);
    const double size_N = in_plane_N.norm();
    const Vec3 r_in_plane_m = r_m - axis * axis.dot(r_m);
    if (size_N <= kParallel * force_N.norm()) {
        arm.foot_m = axis_point_m + r_in_plane_m;
        return arm;
    }
    arm.force_in_plane_N = size_N;
    arm.torque_Nm = axis.dot(r_m.cross(force_N));
    arm.arm_m = std::abs(arm.torque_Nm) / size_N;
    const double along = r_in_plane_m.dot(in_plane_N) / (size_N * size_N);
    arm.foot_m = axis_point_m + r_in_plane_m - along * in_plane_N;
    return arm;
}

} // namespace steelyard::mechanics
