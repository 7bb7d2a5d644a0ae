#pragma once
// Which levers can be computed with.

#include "mechanics/error.h"
#include "mechanics/lever/lever.h"

#include <optional>

namespace steelyard::mechanics {

/// First input of a lever that cannot be computed with, or empty when all of them can.
/// Keys: "path", "axis", "load[i].at", "load[i].mass", "load[i].force", "load[i].direction",
/// "load[i].torque", "effort.at", "effort.direction", "own_weight.mass", "own_weight.centre",
/// "friction.coefficient", "friction.radius", "gravity".
std::optional<MechanicsError> check_lever(const Lever& lever);

} // namespace steelyard::mechanics
