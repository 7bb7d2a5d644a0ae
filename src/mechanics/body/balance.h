#pragma once
// The forces that supports must give so that the whole body is in balance.

#include "mechanics/body/support.h"

namespace steelyard::mechanics {

/// A force and its moment about the world's origin.
struct Wrench {
    Vec3 force_N = Vec3::Zero();
    Vec3 moment_Nm = Vec3::Zero();

    void add(const Vec3& point_m, const Vec3& force) {
        force_N += force;
        moment_Nm += point_m.cross(force);
    }
};

/// Checks contacts and held segment; keys start with "support.".
std::optional<MechanicsError> check_support(const Body& body, const Support& support);

/// Finds the support's forces.
/// @param load    all that acts on the body without its supports, inertia included
/// @param forces  the supports' forces are appended
GroundReading balance(const Body& body, const Placement& placement, const Support& support,
                      const Wrench& load, ForceList& forces);

} // namespace steelyard::mechanics
