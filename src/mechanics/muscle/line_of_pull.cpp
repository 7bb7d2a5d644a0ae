#include "mechanics/muscle/line_of_pull.h"

#include "mechanics/portable.h"

#include <Eigen/Geometry>

#include <cmath>

namespace steelyard::mechanics {
namespace {

MechanicsError unplaced(Fault fault, std::string key, std::string expected) {
    return {fault, std::move(key), std::move(expected)};
}

/// A vector as seen along the axis: r across it, h along it.
Vec3 across(const Vec3& v, const Vec3& axis_direction) {
    return v - v.dot(axis_direction) * axis_direction;
}

/// Angle from one vector to another about the axis, 0 to 2π; both lie across the axis.
double turn_between(const Vec3& from, const Vec3& to, const Vec3& axis_direction) {
    const double angle = portable::atan2(from.cross(to).dot(axis_direction), from.dot(to));
    return angle < 0.0 ? angle + 2.0 * kPi : angle;
}

double torque_arm(const PlacedLine& line, const JointAxis& axis) {
    return (line.insertion_m - axis.point_m).cross(line.direction).dot(axis.direction);
}

/// The path around the cylinder, or nothing when the straight line passes it by.
///
/// Seen along the axis the string leaves the insertion on a tangent, follows the circle and leaves
/// it on a tangent to the origin. Unrolled, the path is straight, so that the rise along the axis
/// is shared out evenly over its length.
std::optional<PlacedLine> wrap_around(const WrapCylinder& cylinder, const Vec3& insertion_m,
                                      const Vec3& origin_m, const JointAxis& axis) {
    const Vec3 winding = axis.direction * static_cast<double>(static_cast<int>(cylinder.side));
    const Vec3 near = across(insertion_m - axis.point_m, winding);
    const Vec3 far = across(origin_m - axis.point_m, winding);
    const double radius_m = cylinder.radius_m;
    const double off_insertion_rad = portable::acos(radius_m / near.norm());
    const double off_origin_rad = portable::acos(radius_m / far.norm());
    const double contact_rad =
        turn_between(near, far, winding) - off_insertion_rad - off_origin_rad;
    if (contact_rad <= 0.0)
        return std::nullopt;

    const portable::SineCosine turn = portable::sine_cosine(off_insertion_rad);
    const double free_near_m = near.norm() * turn.sine;
    const double free_far_m = far.norm() * portable::sin(off_origin_rad);
    const double flat_m = free_near_m + free_far_m + contact_rad * radius_m;
    const double rise_m = (origin_m - insertion_m).dot(winding);

    const Vec3 spoke_m = near.normalized() * radius_m;
    const Vec3 touch = turn.cosine * spoke_m + turn.sine * winding.cross(spoke_m);
    PlacedLine line;
    line.insertion_m = insertion_m;
    line.length_m = portable::hypot(flat_m, rise_m);
    line.direction = ((touch - near) * (flat_m / free_near_m) + rise_m * winding) / line.length_m;
    line.wrapped = true;
    return line;
}

tl::expected<PlacedLine, MechanicsError> placed_by(const AttachmentLine& line,
                                                   const JointAxis& axis) {
    if (!line.insertion_m.allFinite() || !line.origin_m.allFinite())
        return tl::unexpected(unplaced(Fault::not_finite, "line.origin", "finite attachments"));
    PlacedLine placed;
    placed.insertion_m = line.insertion_m;
    placed.length_m = (line.origin_m - line.insertion_m).norm();
    if (placed.length_m < kSamePlace_m)
        return tl::unexpected(unplaced(Fault::zero_length, "line.origin",
                                       "origin and insertion in two different places"));
    placed.direction = (line.origin_m - line.insertion_m) / placed.length_m;
    if (line.wrap) {
        if (!(line.wrap->radius_m > 0.0) || line.wrap->radius_m > kMaxLength_m)
            return tl::unexpected(
                unplaced(Fault::out_of_range, "line.wrap.radius", "a radius above 0"));
        for (const Vec3& end : {line.insertion_m, line.origin_m})
            if (across(end - axis.point_m, axis.direction).norm() <=
                line.wrap->radius_m + kSamePlace_m)
                return tl::unexpected(unplaced(Fault::inconsistent, "line.wrap.radius",
                                               "a cylinder that lies clear of both attachments"));
        if (auto around = wrap_around(*line.wrap, line.insertion_m, line.origin_m, axis))
            placed = *around;
    }
    placed.arm_m = torque_arm(placed, axis);
    return placed;
}

tl::expected<PlacedLine, MechanicsError> placed_by(const FixedAngleLine& line,
                                                   const JointAxis& axis) {
    const double angle = line.angle_to_bone_rad;
    if (!(angle >= 0.0 && angle <= kPi))
        return tl::unexpected(unplaced(Fault::out_of_range, "line.angle", "0 to 180 deg"));
    PlacedLine placed;
    placed.insertion_m = line.insertion_m;
    const Vec3 from_axis = across(placed.insertion_m - axis.point_m, axis.direction);
    if (!from_axis.allFinite())
        return tl::unexpected(unplaced(Fault::not_finite, "line.insertion", "a finite place"));
    if (from_axis.norm() < kSamePlace_m)
        return tl::unexpected(
            unplaced(Fault::zero_length, "line.insertion", "an insertion away from the axis"));
    const Vec3 outward = from_axis.normalized();
    const Vec3 turning =
        axis.direction.cross(outward) * static_cast<double>(static_cast<int>(line.turns));
    const portable::SineCosine pull = portable::sine_cosine(angle);
    placed.direction = pull.sine * turning - pull.cosine * outward;
    placed.arm_m = torque_arm(placed, axis);
    return placed;
}

} // namespace

tl::expected<PlacedLine, MechanicsError> place_line(const LineOfPull& line, const JointAxis& axis) {
    return std::visit([&axis](const auto& convention) { return placed_by(convention, axis); },
                      line);
}

PullParts parts_of_pull(const PlacedLine& line, double tension_N, const JointAxis& axis) {
    const Vec3 from_axis = across(line.insertion_m - axis.point_m, axis.direction);
    const Vec3 pull_N = tension_N * line.direction;
    PullParts parts;
    parts.sideways_N = pull_N.dot(axis.direction);
    const Vec3 in_plane_N = across(pull_N, axis.direction);
    if (from_axis.norm() < kSamePlace_m) {
        // On the axis a pull cannot turn; all of it acts on the joint.
        parts.compressing_N = in_plane_N.norm();
        return parts;
    }
    const Vec3 outward = from_axis.normalized();
    parts.compressing_N = -in_plane_N.dot(outward);
    parts.turning_N = std::abs(in_plane_N.cross(outward).dot(axis.direction));
    return parts;
}

} // namespace steelyard::mechanics
