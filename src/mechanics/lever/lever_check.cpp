#include "mechanics/lever/lever_check.h"

#include "mechanics/lever/lever_geometry.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

constexpr std::size_t kMaxCorners = 1000;
constexpr std::size_t kMaxLoads = 64;
/// Past a thousand turns a direction is a slip of the keyboard.
constexpr double kMaxDirection_rad = 2000.0 * kPi;
/// Dry friction of any known pair of solids stays below this; rubber on rubber comes near 2.
constexpr double kMaxFriction = 10.0;
constexpr double kMaxAxleRadius_m = 10.0;

Found between(double value, double low, double high, const std::string& key, const char* expected) {
    if (!std::isfinite(value))
        return MechanicsError{Fault::not_finite, key, expected};
    if (value < low || value > high)
        return MechanicsError{Fault::out_of_range, key, expected};
    return std::nullopt;
}

Found check_place(double at_m, double length_m, const std::string& key) {
    constexpr const char* expected = "a place from 0 to the length of the lever";
    if (!std::isfinite(at_m))
        return MechanicsError{Fault::not_finite, key, expected};
    if (at_m < -kSamePlace_m || at_m > length_m + kSamePlace_m)
        return MechanicsError{Fault::off_lever, key, expected};
    return std::nullopt;
}

Found check_direction(double direction_rad, const std::string& key) {
    return between(direction_rad, -kMaxDirection_rad, kMaxDirection_rad, key,
                   "a direction from -360000 to 360000 degrees");
}

Found check_mass(double mass_kg, const std::string& key) {
    return between(mass_kg, 0.0, kMaxMass_kg, key, "a mass from 0 to 1000000 kg");
}

Found check_path(const std::vector<Vec2>& path_m) {
    if (path_m.size() < 2 || path_m.size() > kMaxCorners)
        return MechanicsError{Fault::zero_length, "path", "from 2 to 1000 corners"};
    for (const Vec2& corner : path_m)
        for (const double part : {corner.x(), corner.y()})
            if (const Found fault = between(part, -kMaxLength_m, kMaxLength_m, "path",
                                            "corners within 1000 m of the origin"))
                return fault;
    if (path_length(path_m) <= kSamePlace_m)
        return MechanicsError{Fault::zero_length, "path", "corners that lie apart"};
    return std::nullopt;
}

Found check_action(const Weight& weight, double length_m, const std::string& key) {
    if (const Found fault = check_place(weight.at_m, length_m, key + ".at"))
        return fault;
    return check_mass(weight.mass_kg, key + ".mass");
}

Found check_action(const PointForce& force, double length_m, const std::string& key) {
    if (const Found fault = check_place(force.at_m, length_m, key + ".at"))
        return fault;
    if (const Found fault = between(force.magnitude_N, 0.0, kMaxForce_N, key + ".force",
                                    "a force from 0 to 10000000 N (turn its direction instead of "
                                    "making it negative)"))
        return fault;
    return check_direction(force.direction_rad, key + ".direction");
}

Found check_action(const Couple& couple, double /*length_m*/, const std::string& key) {
    return between(couple.torque_Nm, -kMaxTorque_Nm, kMaxTorque_Nm, key + ".torque",
                   "a torque of at most 1000000000 N·m");
}

Found check_loads(const std::vector<Load>& loads, double length_m) {
    if (loads.size() > kMaxLoads)
        return MechanicsError{Fault::out_of_range, "load", "at most 64 loads"};
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const std::string key = "load[" + std::to_string(i) + "]";
        const Found fault =
            std::visit([&](const auto& action) { return check_action(action, length_m, key); },
                       loads[i].action);
        if (fault)
            return fault;
    }
    return std::nullopt;
}

Found check_own_weight(const OwnWeight& own, double length_m) {
    if (const Found fault = check_mass(own.mass_kg, "own_weight.mass"))
        return fault;
    return own.centre_at_m ? check_place(*own.centre_at_m, length_m, "own_weight.centre")
                           : std::nullopt;
}

Found check_friction(const AxisFriction& friction) {
    if (const Found fault = between(friction.coefficient, 0.0, kMaxFriction, "friction.coefficient",
                                    "a coefficient from 0 to 10"))
        return fault;
    return between(friction.radius_m, 0.0, kMaxAxleRadius_m, "friction.radius",
                   "an axle radius from 0 to 10 m");
}

Found check_sought(const Lever& lever) {
    if (const auto* known = std::get_if<SoughtLoad>(&lever.sought)) {
        if (known->load >= lever.loads.size())
            return MechanicsError{Fault::unknown_name, "load", "the load whose size is sought"};
        if (lever.gravity_m_s2 <= 0.0 &&
            std::holds_alternative<Weight>(lever.loads[known->load].action))
            return MechanicsError{Fault::inconsistent, "gravity",
                                  "gravity above 0, or a force sought: a mass weighs nothing here"};
        return between(known->effort_N, 0.0, kMaxForce_N, "effort.force",
                       "a force from 0 to 10000000 N (turn its direction instead of making it "
                       "negative)");
    }
    if (!rests_on_two(lever))
        return std::nullopt;
    if (lever.effort.direction_rad != kUp_rad)
        return MechanicsError{Fault::inconsistent, "effort.direction", "up: a support pushes up"};
    if (lever.friction.coefficient * lever.friction.radius_m > 0.0)
        return MechanicsError{Fault::inconsistent, "friction",
                              "no axle friction: a beam on two supports turns on no axle"};
    return std::nullopt;
}

} // namespace

Found check_lever(const Lever& lever) {
    if (const Found fault = check_path(lever.path_m))
        return fault;
    const double length_m = path_length(lever.path_m);
    if (const Found fault = check_place(lever.axis_at_m, length_m, "axis"))
        return fault;
    if (const Found fault = check_loads(lever.loads, length_m))
        return fault;
    if (const Found fault = check_place(lever.effort.at_m, length_m, "effort.at"))
        return fault;
    if (const Found fault = check_direction(lever.effort.direction_rad, "effort.direction"))
        return fault;
    if (const Found fault = check_own_weight(lever.own_weight, length_m))
        return fault;
    if (const Found fault = check_friction(lever.friction))
        return fault;
    if (const Found fault = check_sought(lever))
        return fault;
    return between(lever.gravity_m_s2, 0.0, kMaxGravity_m_s2, "gravity",
                   "an acceleration from 0 to 1000 m/s²");
}

} // namespace steelyard::mechanics
