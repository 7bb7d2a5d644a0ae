#include "mechanics/resistance/resistance_forces.h"

#include "mechanics/resistance/band.h"
#include "mechanics/resistance/resistance_kinds.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

namespace {

using Appended = tl::expected<void, MechanicsError>;

/// A line needs two points this far apart to have a direction worth the name [m].
constexpr double kLeastLine_m = 1.0e-3;
/// Nearest that a machine's pad may sit to its axis [m].
constexpr double kLeastPadArm_m = 0.01;

/// All that a resistance needs to know about the moment.
struct Scene {
    const Body& body;
    const Pose& pose;
    const Placement& placement;
    const BodyMotion* motion;
    double gravity_m_s2;
    unsigned char index;
    ForceList& forces;

    Vec3 world(const BodyPoint& point) const {
        // A point that check_resistance has let pass always has a place.
        return placement[point.segment].at(local_point(body, point).value_or(Vec3::Zero()));
    }

    void push(Segment segment, const Vec3& point_m, const Vec3& force_N) {
        BodyForce force;
        force.segment = segment;
        force.index = index;
        force.point_m = point_m;
        force.force_N = force_N;
        forces.push_back(force);
    }

    /// A mass that moves with a point of a segment and resists its acceleration.
    void push_weight(Segment segment, const Vec3& point_m, double mass_kg) {
        Vec3 pull_m_s2(0.0, -gravity_m_s2, 0.0);
        if (motion)
            pull_m_s2 -= acceleration_at(placement[segment], (*motion)[index_of(segment)], point_m);
        push(segment, point_m, mass_kg * pull_m_s2);
    }
};

tl::unexpected<MechanicsError> inconsistent(std::string key, std::string expected) {
    return tl::unexpected(MechanicsError{Fault::inconsistent, std::move(key), std::move(expected)});
}

Appended append(Scene& scene, const Dumbbell& dumbbell) {
    scene.push_weight(dumbbell.hand, scene.world(grip_of(dumbbell.hand)), dumbbell.mass_kg);
    return {};
}

Appended append(Scene& scene, const Barbell& bar) {
    if (bar.resting_on) {
        scene.push_weight(bar.resting_on->segment, scene.world(*bar.resting_on), bar.mass_kg);
        return {};
    }
    for (const Segment hand : {Segment::right_hand, Segment::left_hand})
        scene.push_weight(hand, scene.world(grip_of(hand)), 0.5 * bar.mass_kg);
    return {};
}

Appended append(Scene& scene, const Kettlebell& bell) {
    Vec3 point_m = scene.world(grip_of(bell.hand));
    // A bell that hangs pulls through the grip; only one that is held stiff has an arm from it.
    if (bell.follows_hand)
        point_m +=
            scene.placement[bell.hand].rotation * bell.direction.normalized() * bell.offset_m;
    scene.push_weight(bell.hand, point_m, bell.mass_kg);
    return {};
}

Appended append(Scene& scene, const Cuff& cuff) {
    scene.push_weight(cuff.at.segment, scene.world(cuff.at), cuff.mass_kg);
    return {};
}

Appended append(Scene& scene, const PlateMachine& machine) {
    const Vec3& axis = scene.placement.axis(machine.hinge);
    const Vec3 pad_m = scene.world(machine.pad);
    Vec3 arm_m = pad_m - scene.placement.axis_point_m(machine.hinge);
    arm_m -= axis * axis.dot(arm_m);
    const double distance_m = arm_m.norm();
    if (distance_m < kLeastPadArm_m)
        return inconsistent("pad", "a pad at least 0.01 m away from the machine's axis");
    const double torque_Nm = machine.pushes * machine.stack_kg * scene.gravity_m_s2 *
                             cam_radius(machine, scene.pose[machine.hinge]);
    const Vec3 direction = axis.cross(arm_m) / distance_m;
    scene.push(machine.pad.segment, pad_m, direction * (torque_Nm / distance_m));
    return {};
}

/// A pull along a line to a pulley.
Appended pull_to(Scene& scene, const BodyPoint& at, const Vec3& pulley_m, double tension_N) {
    const Vec3 point_m = scene.world(at);
    const Vec3 line_m = pulley_m - point_m;
    const double length_m = line_m.norm();
    if (length_m < kLeastLine_m)
        return inconsistent("pulley", "a pulley away from the point that the cable pulls on");
    scene.push(at.segment, point_m, line_m * (tension_N / length_m));
    return {};
}

Appended append(Scene& scene, const Cable& cable) {
    return pull_to(scene, cable.at, cable.pulley_m, cable.tension_N);
}

Appended append(Scene& scene, const CableColumn& column) {
    return pull_to(scene, column.at, column.pulley_m, rope_tension(column, scene.gravity_m_s2));
}

Appended append(Scene& scene, const Band& band) {
    const Vec3 point_m = scene.world(band.at);
    const auto* other = std::get_if<BodyPoint>(&band.anchor);
    const Vec3 anchor_m = other ? scene.world(*other) : std::get<Vec3>(band.anchor);
    const Vec3 line_m = anchor_m - point_m;
    const double length_m = line_m.norm();
    const auto pull_N = band_force(band, length_m);
    if (!pull_N)
        return tl::unexpected(pull_N.error());
    // A slack band has no direction to speak of when its ends meet.
    const Vec3 force_N = *pull_N > 0.0 ? Vec3(line_m * (*pull_N / length_m)) : Vec3(Vec3::Zero());
    scene.push(band.at.segment, point_m, force_N);
    if (other)
        scene.push(other->segment, anchor_m, -force_N);
    return {};
}

Appended append(Scene& scene, const PartnerPush& partner) {
    Vec3 direction = partner.direction.normalized();
    if (partner.follows_segment)
        direction = scene.placement[partner.at.segment].rotation * direction;
    scene.push(partner.at.segment, scene.world(partner.at), partner.force_N * direction);
    return {};
}

} // namespace

double rope_tension(const CableColumn& column, double gravity_m_s2) {
    return column.stack_kg * gravity_m_s2 / column.rope_ratio;
}

double cam_radius(const PlateMachine& machine, double angle_rad) {
    const auto after = std::find_if(machine.cam.begin(), machine.cam.end(),
                                    [&](const CamEntry& e) { return e.angle_rad > angle_rad; });
    if (after == machine.cam.begin())
        return machine.cam.front().radius_m;
    if (after == machine.cam.end())
        return machine.cam.back().radius_m;
    const CamEntry& before = *(after - 1);
    const double part = (angle_rad - before.angle_rad) / (after->angle_rad - before.angle_rad);
    return before.radius_m + part * (after->radius_m - before.radius_m);
}

tl::expected<void, MechanicsError> append_forces(const Body& body, const Pose& pose,
                                                 const Placement& placement,
                                                 const BodyMotion* motion, double gravity_m_s2,
                                                 const Resistance& resistance, std::size_t index,
                                                 ForceList& forces) {
    Scene scene{body,  pose, placement, motion, gravity_m_s2, static_cast<unsigned char>(index),
                forces};
    return std::visit([&](const auto& kind) { return append(scene, kind); }, resistance.kind);
}

} // namespace steelyard::mechanics
