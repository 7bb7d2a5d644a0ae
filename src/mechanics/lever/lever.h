#pragma once
// A lever on one axis, as plain data: what turns, where it turns, what pulls on it.
//
// Frame: x to the right, y up, angles and torques counter-clockwise positive. A place on the lever
// is the distance along it from its first end ("at_m"), also on a bent lever.

#include "mechanics/constants.h"

#include <Eigen/Core>

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::mechanics {

using Vec2 = Eigen::Vector2d;

/// Straight down, the direction of every weight [rad].
inline constexpr double kDown_rad = -0.5 * kPi;
/// Straight up [rad].
inline constexpr double kUp_rad = 0.5 * kPi;

/// A mass that hangs from or rests on the lever; its weight pulls straight down.
struct Weight {
    double at_m = 0.0;    ///< place along the lever [m]
    double mass_kg = 0.0; ///< [kg], >= 0
};

/// A force of known size and direction.
struct PointForce {
    double at_m = 0.0;                ///< place along the lever [m]
    double magnitude_N = 0.0;         ///< [N], >= 0
    double direction_rad = kDown_rad; ///< the way it pulls, from +x counter-clockwise [rad]
};

/// A pure turning moment without a place, such as a stiff hinge or a wrench.
struct Couple {
    double torque_Nm = 0.0; ///< [N·m], counter-clockwise positive
};

struct Load {
    std::string name = "load";
    std::variant<Weight, PointForce, Couple> action;
};

/// The force that moves, holds or lowers the loads. What is known of its size: see Sought.
struct Effort {
    std::string name = "effort";
    double at_m = 0.0;                ///< place along the lever [m]
    double direction_rad = kDown_rad; ///< the way it pulls, from +x counter-clockwise [rad]
};

/// Weight of the lever itself.
struct OwnWeight {
    double mass_kg = 0.0;              ///< [kg], >= 0; 0 = taken as weightless
    std::optional<double> centre_at_m; ///< place of the centre of mass along the lever [m];
                                       ///< empty = uniform, so the centroid of the path
};

/// A dry bearing: the axis resists turning with coefficient × radius × reaction.
struct AxisFriction {
    double coefficient = 0.0; ///< [-], >= 0
    double radius_m = 0.0;    ///< of the axle [m], >= 0
};

/// The effort's size is sought: the one that balances the lever.
struct SoughtEffort {};

/// The effort's size is known, and that of one load is sought: the one that it just balances. What
/// the load itself says of its size is the size last found, see fill_in_found_load.
struct SoughtLoad {
    std::size_t load = 0;  ///< which of the lever's loads
    double effort_N = 0.0; ///< along the effort's direction [N], >= 0
};

/// A beam that lies on two supports: what each of them bears is sought. The first support is at
/// the lever's axis and holds the beam there, so that it takes horizontal pulls too; the second is
/// at the effort and pushes straight up. Both can only push up.
struct SoughtReactions {
    std::string first_support = "first support"; ///< the second's name is the effort's
};

/// What a lever is solved for.
using Sought = std::variant<SoughtEffort, SoughtLoad, SoughtReactions>;

/// A rigid lever on one axis, or a beam on two supports. The defaults make a sensible example.
struct Lever {
    std::vector<Vec2> path_m{{0.0, 0.0}, {1.0, 0.0}}; ///< corners from end to end [m], two or more
    double axis_at_m = 0.5;                           ///< place of the axis along the lever [m]
    std::vector<Load> loads{{"load", Weight{0.0, 10.0}}};
    Effort effort{"effort", 1.0, kDown_rad};
    OwnWeight own_weight;
    AxisFriction friction;
    double gravity_m_s2 = kStandardGravity; ///< [m/s²], >= 0
    Sought sought;
};

/// Whether it is a beam on two supports.
bool rests_on_two(const Lever& lever);

/// "axis", or the name of the first of two supports.
std::string axis_name(const Lever& lever);

/// The load whose size is sought; empty when none is.
std::optional<std::size_t> sought_load(const Lever& lever);

} // namespace steelyard::mechanics
