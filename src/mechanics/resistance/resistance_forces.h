#pragma once
// The forces that resistances put on the body in a pose.

#include "mechanics/body/force.h"
#include "mechanics/resistance/resistance.h"

namespace steelyard::mechanics {

/// Checks everything about a resistance that does not depend on the pose.
/// @param index  its place in the setup, for the key: "resistances[1].mass"
tl::expected<void, MechanicsError> check_resistance(const Body& body, const Resistance& resistance,
                                                    std::size_t index);

/// Effective cam radius at a hinge angle [m].
double cam_radius(const PlateMachine& machine, double angle_rad);

/// Appends the forces of one resistance.
/// @param motion  how the segments move, so that weights also resist acceleration
///                (force = mass × (g - a) at the point that carries them); null at rest
/// @return nothing, or what cannot be: a pulley in the hand, a band stretched beyond its table, a
///         pad on the axis; keys are those of the resistance ("pulley")
tl::expected<void, MechanicsError> append_forces(const Body& body, const Pose& pose,
                                                 const Placement& placement,
                                                 const BodyMotion* motion, double gravity_m_s2,
                                                 const Resistance& resistance, std::size_t index,
                                                 ForceList& forces);

} // namespace steelyard::mechanics
