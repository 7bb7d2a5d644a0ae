#include "mechanics/body/solve_body.h"

#include "mechanics/body/balance.h"
#include "mechanics/body/body_check.h"
#include "mechanics/body/solve_pose.h"
#include "mechanics/body/tree.h"
#include "mechanics/bounds.h"
#include "mechanics/resistance/resistance_forces.h"

namespace steelyard::mechanics {

namespace {

using Wrenches = std::array<Wrench, kSegmentCount>;

/// Weight of every segment.
void add_weights(const BodyCase& body_case, const Body& body, const Placement& placement,
                 Wrenches& on) {
    for (std::size_t i = 0; i < kSegmentCount; ++i) {
        const double weight_N = body.segments[i].mass_kg * body_case.gravity_m_s2;
        const Vec3& com_m = placement.segments[i].com_m;
        on[i].force_N = Vec3(0.0, -weight_N, 0.0);
        on[i].moment_Nm = Vec3(com_m.z() * weight_N, 0.0, -com_m.x() * weight_N);
    }
}

/// What the segments' own mass resists with when they accelerate (d'Alembert).
void add_inertia(const Body& body, const Placement& placement, const BodyMotion& moving,
                 Wrenches& on) {
    for (std::size_t i = 0; i < kSegmentCount; ++i) {
        const SegmentBody& segment = body.segments[i];
        const SegmentFrame& frame = placement.segments[i];
        const Vec3 force_N = -segment.mass_kg * acceleration_at(frame, moving[i], frame.com_m);
        // Euler's equations, in the segment's frame where its inertia is constant.
        const Vec3 rate = frame.rotation.transpose() * moving[i].angular_velocity_rad_s;
        const Vec3 acceleration =
            frame.rotation.transpose() * moving[i].angular_acceleration_rad_s2;
        const Vec3 local_Nm =
            segment.inertia_kg_m2 * acceleration + rate.cross(segment.inertia_kg_m2 * rate);
        on[i].force_N = force_N;
        on[i].moment_Nm = frame.com_m.cross(force_N) - frame.rotation * local_Nm;
    }
}

void add_force(const BodyForce& force, Wrench& on) {
    on.add(force.point_m, force.force_N);
    on.moment_Nm += force.couple_Nm;
}

/// Sums from the tips inwards; what a joint carries is all that acts beyond it.
void gather_inwards(Wrenches& on) {
    for (std::size_t i = kSegmentCount - 1; i > 0; --i) {
        Wrench& parent = on[tree::kParent[i]];
        parent.force_N += on[i].force_N;
        parent.moment_Nm += on[i].moment_Nm;
    }
}

/// Moment of a wrench about a point.
Vec3 moment_about(const Wrench& wrench, const Vec3& point_m) {
    return wrench.moment_Nm - point_m.cross(wrench.force_N);
}

/// Torque of the gathered wrenches about every hinge.
void project(const Placement& placement, const Wrenches& beyond, PerHinge& torque_Nm) {
    for (std::size_t i = 1; i < kSegmentCount; ++i) {
        const Vec3 moment_Nm = moment_about(beyond[i], placement.segments[i].joint_m);
        for (std::size_t k = 0; k < tree::kHingesOf[i]; ++k) {
            const std::size_t hinge = tree::kFirstHinge[i] + k;
            torque_Nm[hinge] = placement.axes[hinge].dot(moment_Nm);
        }
    }
}

/// Total of the segments' wrenches, none gathered yet.
Wrench total_of(const Wrenches& on) {
    Wrench total;
    for (const Wrench& wrench : on) {
        total.force_N += wrench.force_N;
        total.moment_Nm += wrench.moment_Nm;
    }
    return total;
}

void solve_torques(Wrenches& felt, Wrenches* inertia, BodyResult& result) {
    gather_inwards(felt);
    project(result.placement, felt, result.external_Nm);
    for (std::size_t hinge = 0; hinge < kHingeCount; ++hinge)
        result.muscle_Nm[hinge] = -result.external_Nm[hinge];
    for (std::size_t i = 0; i < kSegmentCount; ++i)
        result.joint_force_N[i] = -felt[i].force_N;
    Wrench left = felt[0];
    if (inertia) {
        gather_inwards(*inertia);
        PerHinge inertial_Nm;
        project(result.placement, *inertia, inertial_Nm);
        for (std::size_t hinge = 0; hinge < kHingeCount; ++hinge)
            result.muscle_Nm[hinge] -= inertial_Nm[hinge];
        for (std::size_t i = 0; i < kSegmentCount; ++i)
            result.joint_force_N[i] -= (*inertia)[i].force_N;
        left.force_N += (*inertia)[0].force_N;
        left.moment_Nm += (*inertia)[0].moment_Nm;
    }
    result.joint_force_N[0].setZero();
    result.leftover_force_N = left.force_N;
    result.leftover_couple_Nm = moment_about(left, result.placement.segments[0].joint_m);
}

} // namespace

tl::expected<void, MechanicsError> solve_pose(const BodyCase& body_case, const Body& body,
                                              const Pose& pose, const Motion* motion,
                                              BodyResult& result) {
    place(body, pose, result.placement);
    const Placement& placement = result.placement;
    BodyMotion moving;
    Wrenches inertia;
    if (motion) {
        move(pose, placement, *motion, moving);
        add_inertia(body, placement, moving, inertia);
    }

    result.forces.clear();
    for (std::size_t i = 0; i < body_case.resistances.size(); ++i) {
        auto appended =
            append_forces(body, pose, placement, motion ? &moving : nullptr, body_case.gravity_m_s2,
                          body_case.resistances[i], i, result.forces);
        if (!appended)
            return tl::unexpected(within_key(indexed("resistances", i), appended.error()));
    }

    Wrenches felt;
    add_weights(body_case, body, placement, felt);
    for (const BodyForce& force : result.forces)
        add_force(force, felt[index_of(force.segment)]);
    Wrench load = total_of(felt);
    if (motion) {
        const Wrench total = total_of(inertia);
        load.force_N += total.force_N;
        load.moment_Nm += total.moment_Nm;
    }
    const std::size_t carried = result.forces.size();
    result.ground = balance(body, placement, body_case.support, load, result.forces);
    for (std::size_t i = carried; i < result.forces.size(); ++i)
        add_force(result.forces[i], felt[index_of(result.forces[i].segment)]);

    solve_torques(felt, motion ? &inertia : nullptr, result);
    result.centre_of_mass_m = centre_of_mass(body, placement);
    return {};
}

tl::expected<void, MechanicsError> check_case(const BodyCase& body_case) {
    if (auto fault = check_body(body_case.body))
        return tl::unexpected(*std::move(fault));
    if (auto fault = outside(body_case.gravity_m_s2, 0.0, kMaxGravity_m_s2, "gravity",
                             "a gravity from 0 to 1000 m/s²"))
        return tl::unexpected(*std::move(fault));
    if (body_case.resistances.size() > kMaxResistances)
        return tl::unexpected(
            MechanicsError{Fault::inconsistent, "resistances", "at most 12 resistances"});
    for (std::size_t i = 0; i < body_case.resistances.size(); ++i)
        if (auto checked = check_resistance(body_case.body, body_case.resistances[i], i); !checked)
            return checked;
    if (auto fault = check_support(body_case.body, body_case.support))
        return tl::unexpected(*std::move(fault));
    return {};
}

namespace {

/// Fastest that a limb can be meant to turn [rad/s, rad/s²]: above any thrown ball.
constexpr double kMostRate_rad_s = 300.0;
constexpr double kMostAcceleration_rad_s2 = 1.0e5;

tl::expected<void, MechanicsError> check_motion(const Motion& motion) {
    for (const HingeInfo& hinge : all_hinges()) {
        const std::size_t i = index_of(hinge.hinge);
        auto fault = outside(motion.rate_rad_s[i], -kMostRate_rad_s, kMostRate_rad_s, hinge.name,
                             "a rate of at most 300 rad/s");
        if (!fault)
            fault = outside(motion.acceleration_rad_s2[i], -kMostAcceleration_rad_s2,
                            kMostAcceleration_rad_s2, hinge.name,
                            "an acceleration of at most 100000 rad/s²");
        if (fault)
            return tl::unexpected(within_key("motion", *std::move(fault)));
    }
    return {};
}

tl::expected<BodyResult, MechanicsError> solve_checked(const BodyCase& body_case,
                                                       const Motion* motion) {
    if (auto checked = check_case(body_case); !checked)
        return tl::unexpected(checked.error());
    if (auto checked = check_pose(body_case.body, body_case.pose); !checked)
        return tl::unexpected(checked.error());
    tl::expected<BodyResult, MechanicsError> result;
    if (auto solved = solve_pose(body_case, body_case.body, body_case.pose, motion, *result);
        !solved)
        return tl::unexpected(solved.error());
    return result;
}

} // namespace

tl::expected<BodyResult, MechanicsError> solve_body(const BodyCase& body_case) {
    return solve_checked(body_case, nullptr);
}

tl::expected<BodyResult, MechanicsError> solve_body(const BodyCase& body_case,
                                                    const Motion& motion) {
    if (auto checked = check_motion(motion); !checked)
        return tl::unexpected(checked.error());
    return solve_checked(body_case, &motion);
}

bool acts_distally(const BodyForce& force, Hinge hinge) {
    return is_at_or_beyond(force.segment, joint_info(hinge_info(hinge).joint).segment);
}

HingeArm arm_of(const BodyResult& result, std::size_t force, Hinge hinge) {
    const BodyForce& acting = result.forces[force];
    return arm_about(result.placement.axis_point_m(hinge), result.placement.axis(hinge),
                     acting.point_m, acting.force_N);
}

WeightBeyond weight_beyond(const BodyCase& body_case, const BodyResult& result, Hinge hinge) {
    const Segment moved = joint_info(hinge_info(hinge).joint).segment;
    Vec3 moment = Vec3::Zero();
    double mass_kg = 0.0;
    for (const SegmentInfo& info : all_segments()) {
        if (!is_at_or_beyond(info.segment, moved))
            continue;
        const double segment_kg = body_case.body[info.segment].mass_kg;
        moment += segment_kg * result.placement[info.segment].com_m;
        mass_kg += segment_kg;
    }
    const Vec3 com_m =
        mass_kg > 0.0 ? Vec3(moment / mass_kg) : result.placement.axis_point_m(hinge);
    return {com_m, mass_kg * body_case.gravity_m_s2};
}

HingeArm weight_arm(const BodyCase& body_case, const BodyResult& result, Hinge hinge) {
    const WeightBeyond weight = weight_beyond(body_case, result, hinge);
    return arm_about(result.placement.axis_point_m(hinge), result.placement.axis(hinge),
                     weight.com_m, Vec3(0.0, -weight.weight_N, 0.0));
}

} // namespace steelyard::mechanics
