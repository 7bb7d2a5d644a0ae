#pragma once
// The efforts between which a dry axle keeps a lever where it is.

#include "mechanics/lever/lever.h"

#include <optional>

namespace steelyard::mechanics {

/// Everything about a lever that the friction of its axis depends on.
struct AxleBalance {
    double torque_load_Nm = 0.0;          ///< of loads and own weight, counter-clockwise positive
    Vec2 force_load_N = Vec2::Zero();     ///< sum of loads and own weight
    double signed_effort_arm_m = 0.0;     ///< torque of 1 N of effort, counter-clockwise positive
    Vec2 effort_direction = Vec2::Zero(); ///< unit vector of the effort
    double friction_radius_m = 0.0;       ///< coefficient × axle radius: the friction circle
};

/// Efforts at the edge of moving [N], along the effort's direction.
struct AxleEfforts {
    std::optional<double> moving_N; ///< just moves the load; empty when no effort can
    std::optional<double>
        holding_N; ///< just keeps the load from winning; empty when none is needed
};

/// The efforts at which the torque left over equals what the axle can hold,
/// |torque| = friction radius × |reaction|, found from the quadratic that this makes.
/// The effort's arm must not be zero.
/// Source: friction circle of a journal bearing, any statics text.
AxleEfforts efforts_with_axle_friction(const AxleBalance& balance);

} // namespace steelyard::mechanics
