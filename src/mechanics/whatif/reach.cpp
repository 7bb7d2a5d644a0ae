#include "mechanics/whatif/reach.h"

#include "mechanics/body/landmarks.h"
#include "mechanics/portable.h"
#include "mechanics/range/stick.h"
#include "mechanics/resistance/resistance_kinds.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <optional>

namespace steelyard::mechanics {
namespace {

/// The hand that holds a load, and where. A machine's pad pushes a hand and is not held.
std::optional<BodyPoint> hand_point(const Resistance& resistance) {
    const BodyPoint point = carrier_of(resistance);
    const bool is_held =
        is_hand(point.segment) && !std::holds_alternative<PlateMachine>(resistance.kind);
    return is_held ? std::optional(point) : std::nullopt;
}

MechanicsError no_reach(const char* expected) {
    return {Fault::inconsistent, "change.reach", expected};
}

Hinge nearest_shoulder_hinge(const Placement& placement, bool right, const Vec3& axis) {
    const Hinge flexion = right ? Hinge::right_shoulder_flexion : Hinge::left_shoulder_flexion;
    const Hinge abduction =
        right ? Hinge::right_shoulder_abduction : Hinge::left_shoulder_abduction;
    const auto along = [&](Hinge hinge) { return std::abs(placement.axis(hinge).dot(axis)); };
    return along(flexion) >= along(abduction) ? flexion : abduction;
}

/// The part of a swing without a turning point of the distance that holds δ = 0.
Interval monotone_part(double top_rad) {
    const double from_top = std::remainder(-top_rad, 2.0 * kPi); // δ = 0 seen from the top
    return from_top < 0.0 ? Interval{-kPi - from_top, -from_top}
                          : Interval{-from_top, kPi - from_top};
}

} // namespace

bool held_alike_on_both_sides(const Exercise& exercise, Hinge hinge) {
    const Hinge mirror = hinge_info(hinge).mirror;
    const auto alike = [&](const PerHinge& angles) {
        return angles[index_of(hinge)] == angles[index_of(mirror)];
    };
    return mirror != hinge && alike(exercise.body_case.pose.angle_rad) &&
           (!exercise.path ||
            (alike(exercise.path->end_angle_rad) &&
             (!exercise.path->halfway_rad || alike(*exercise.path->halfway_rad))));
}

void shift_hinge(Exercise& exercise, Hinge hinge, bool both_sides, double delta_rad) {
    exercise.body_case.pose[hinge] += delta_rad;
    if (exercise.path) {
        exercise.path->end_angle_rad[index_of(hinge)] += delta_rad;
        if (exercise.path->halfway_rad)
            (*exercise.path->halfway_rad)[index_of(hinge)] += delta_rad;
    }
    if (both_sides)
        shift_hinge(exercise, hinge_info(hinge).mirror, false, delta_rad);
}

tl::expected<Exercise, MechanicsError> kept_in_place(Exercise changed, const Exercise& before,
                                                     const std::vector<Hinge>& kept) {
    auto movement = stick(changed.body_case, changed.path, before.body_case.pose, kept);
    if (!movement)
        return tl::unexpected(movement.error());
    changed.body_case.pose = movement->start;
    changed.path = std::move(movement->path);
    return changed;
}

Interval allowed_shift(const Exercise& exercise, Hinge hinge) {
    const double start = exercise.body_case.pose[hinge];
    const double end = exercise.path ? exercise.path->end_angle_rad[index_of(hinge)] : start;
    const double halfway = exercise.path && exercise.path->halfway_rad
                               ? (*exercise.path->halfway_rad)[index_of(hinge)]
                               : start;
    const HingeInfo& info = hinge_info(hinge);
    return {std::min(0.0, info.least_rad - std::min({start, halfway, end})),
            std::max(0.0, info.most_rad - std::max({start, halfway, end}))};
}

double ArmSwing::distance_m(double delta_rad) const {
    return middle_m + radius_m * portable::cos(delta_rad - top_rad);
}

double ArmSwing::delta_rad(double distance_m) const {
    const double from_top =
        portable::acos(std::clamp((distance_m - middle_m) / radius_m, -1.0, 1.0));
    // Both ±from_top give the distance; one of them lies on our side of the turning point.
    const Interval part = monotone_part(top_rad);
    const double middle = 0.5 * (part.low + part.high);
    const auto near_part = [&](double delta) {
        return middle + std::remainder(delta - middle, 2.0 * kPi);
    };
    const double one = near_part(top_rad + from_top);
    const double other = near_part(top_rad - from_top);
    const double delta = std::abs(one - middle) <= std::abs(other - middle) ? one : other;
    return std::clamp(delta, swing_rad.low, swing_rad.high);
}

tl::expected<ArmSwing, MechanicsError> arm_swing(const LoadReach& reach, const Exercise& exercise) {
    const BodyCase& body_case = exercise.body_case;
    if (reach.resistance >= body_case.resistances.size())
        return tl::unexpected(MechanicsError{Fault::unknown_name, "change.resistance",
                                             "the number of a resistance of the exercise"});
    const auto held = hand_point(body_case.resistances[reach.resistance]);
    if (!held)
        return tl::unexpected(no_reach("a load that is held in the hands"));
    const bool right = held->segment == Segment::right_hand;
    const Segment upper_arm = right ? Segment::right_upper_arm : Segment::left_upper_arm;
    const Segment anchored = body_case.pose.anchor.point.segment;
    if (is_at_or_beyond(anchored, Segment::right_upper_arm) ||
        is_at_or_beyond(anchored, Segment::left_upper_arm))
        return tl::unexpected(no_reach("a body that does not stand or hang on its arms"));
    const Segment moved_by_hinge = joint_info(hinge_info(reach.from).joint).segment;
    if (moved_by_hinge != upper_arm && is_at_or_beyond(moved_by_hinge, upper_arm))
        return tl::unexpected(no_reach("a joint that stays when the arm swings"));
    const auto local_m = local_point(body_case.body, *held);
    if (!local_m)
        return tl::unexpected(local_m.error());

    const Placement placement = place(body_case.body, body_case.pose);
    const Vec3 axis = placement.axis(reach.from);
    Vec3 outward = Vec3::UnitY().cross(axis);
    constexpr double kUpright = 1e-6; // an axis within a millionth of upright has no near and far
    if (outward.norm() < kUpright)
        return tl::unexpected(no_reach("a joint whose axis does not stand upright"));
    outward.normalize();
    const Vec3 joint_m = placement.axis_point_m(reach.from);
    const Vec3 hand_m = placement[held->segment].at(*local_m);
    if ((hand_m - joint_m).dot(outward) < 0.0)
        outward = -outward;

    ArmSwing swing;
    swing.shoulder = nearest_shoulder_hinge(placement, right, axis);
    swing.both_sides = held_alike_on_both_sides(exercise, swing.shoulder);
    const Vec3 turn = placement.axis(swing.shoulder);
    const Vec3 shoulder_m = placement.axis_point_m(swing.shoulder);
    const Vec3 arm_m = hand_m - shoulder_m;
    const Vec3 along_axis_m = arm_m.dot(turn) * turn;
    const double cosine_part = (arm_m - along_axis_m).dot(outward);
    const double sine_part = turn.cross(arm_m - along_axis_m).dot(outward);
    swing.middle_m = (shoulder_m - joint_m + along_axis_m).dot(outward);
    swing.radius_m = portable::hypot(cosine_part, sine_part);
    if (swing.radius_m < kSamePlace_m)
        return tl::unexpected(no_reach("an arm whose swing moves the load nearer or farther"));
    swing.top_rad = portable::atan2(sine_part, cosine_part);
    const Interval part = monotone_part(swing.top_rad);
    const Interval allowed = allowed_shift(exercise, swing.shoulder);
    swing.swing_rad = {std::max(part.low, allowed.low), std::min(part.high, allowed.high)};
    return swing;
}

} // namespace steelyard::mechanics
