#include "words/body/load_at_joint.h"

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::BodyForce;
using mechanics::ForceOrigin;
using mechanics::Hinge;

bool is_resistance(const BodyForce& force) {
    return force.origin == ForceOrigin::resistance;
}

/// The part of what carries the body that pushes up beyond a hinge.
double part_carried(const mechanics::BodyResult& result, Hinge hinge) {
    constexpr double kNoPush_N = 1e-6;
    double all_N = 0.0;
    double beyond_N = 0.0;
    for (const BodyForce& force : result.forces) {
        if (is_resistance(force))
            continue;
        all_N += force.force_N.y();
        if (mechanics::acts_distally(force, hinge))
            beyond_N += force.force_N.y();
    }
    if (all_N < kNoPush_N || beyond_N < kNoPush_N)
        return 1.0;
    return std::min(1.0, beyond_N / all_N);
}

} // namespace

std::optional<LoadAtJoint> load_at_joint(const mechanics::BodyResult& result, Hinge hinge) {
    const auto& forces = result.forces;
    const bool any_distal = std::any_of(forces.begin(), forces.end(), [&](const BodyForce& force) {
        return is_resistance(force) && mechanics::acts_distally(force, hinge);
    });
    std::optional<LoadAtJoint> at;
    double most_Nm = -1.0;
    for (std::size_t i = 0; i < forces.size(); ++i) {
        if (!is_resistance(forces[i]) ||
            (any_distal && !mechanics::acts_distally(forces[i], hinge)))
            continue;
        if (!at)
            at = LoadAtJoint{};
        const mechanics::HingeArm arm = mechanics::arm_of(result, i, hinge);
        at->force_N += forces[i].force_N;
        at->torque_Nm += arm.torque_Nm;
        if (std::abs(arm.torque_Nm) > most_Nm) {
            most_Nm = std::abs(arm.torque_Nm);
            at->arm_m = arm.arm_m;
        }
    }
    if (at && !any_distal)
        at->part = part_carried(result, hinge);
    return at;
}

} // namespace steelyard::words
