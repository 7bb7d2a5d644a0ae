#pragma once
// What of the resistances a joint has to bear.

#include "mechanics/body/solve_body.h"

#include <optional>

namespace steelyard::words {

/// What the resistances do about a hinge.
struct LoadAtJoint {
    mechanics::Vec3 force_N = mechanics::Vec3::Zero(); ///< of those on its way, added up
    double torque_Nm = 0.0;                            ///< signed like the hinge
    double arm_m = 0.0;                                ///< of the one that turns most
    /// The part of the force that this side bears: all of it beyond the joint; of a load that comes
    /// down through the legs what this leg carries, by the ground's upward push, 0 to 1.
    double part = 1.0;

    /// [N]
    double size_N() const { return part * force_N.norm(); }
};

/// The resistances on the distal side; where none is, as at the hip of someone who stands with a
/// bar in the hands, all of them: they reach the joint from the other side.
/// @return empty without any resistance
std::optional<LoadAtJoint> load_at_joint(const mechanics::BodyResult& result,
                                         mechanics::Hinge hinge);

} // namespace steelyard::words
