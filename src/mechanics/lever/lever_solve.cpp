#include "mechanics/lever/lever_solve.h"

#include "mechanics/lever/axis_friction.h"
#include "mechanics/lever/lever_check.h"
#include "mechanics/lever/lever_class.h"
#include "mechanics/lever/lever_geometry.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// How far an advantage may stray from 1 before it is said to lie on one side of it: rounding.
constexpr double kAdvantageSlack = 1e-9;

ForceReading read_force(const Vec2& axis_m, const Vec2& point_m, const Vec2& force_N,
                        const Vec2& unit_direction) {
    ForceReading reading;
    reading.point_m = point_m;
    reading.force_N = force_N;
    reading.torque_Nm = torque_about(axis_m, {point_m, force_N});
    reading.arm_m = moment_arm(axis_m, point_m, unit_direction);
    reading.foot_m = foot_of_arm(axis_m, point_m, unit_direction);
    return reading;
}

ForceReading read_weight(const Lever& lever, const Vec2& axis_m, const Vec2& point_m,
                         double mass_kg) {
    const Vec2 down{0.0, -1.0};
    return read_force(axis_m, point_m, down * (mass_kg * lever.gravity_m_s2), down);
}

ForceReading read_load(const Lever& lever, const Vec2& axis_m, const Load& load) {
    if (const auto* weight = std::get_if<Weight>(&load.action))
        return read_weight(lever, axis_m, point_at(lever.path_m, weight->at_m), weight->mass_kg);
    if (const auto* force = std::get_if<PointForce>(&load.action)) {
        const Vec2 along = unit_vector(force->direction_rad);
        return read_force(axis_m, point_at(lever.path_m, force->at_m), along * force->magnitude_N,
                          along);
    }
    ForceReading reading;
    reading.point_m = axis_m;
    reading.foot_m = axis_m;
    reading.torque_Nm = std::get<Couple>(load.action).torque_Nm;
    return reading;
}

/// Torque and force of everything but the effort.
struct LoadSum {
    double torque_Nm = 0.0;
    Vec2 force_N = Vec2::Zero();

    void add(const ForceReading& reading) {
        torque_Nm += reading.torque_Nm;
        force_N += reading.force_N;
    }
};

void set_class(const Lever& lever, LeverResult& result) {
    const Classification found = classify_lever(lever);
    result.lever_class = found.lever_class;
    result.class_reason = found.reason;
    if (!result.ideal_advantage)
        return;
    const double ideal = *result.ideal_advantage;
    result.advantage_contradicts_class =
        (found.lever_class == LeverClass::second && ideal < 1.0 - kAdvantageSlack) ||
        (found.lever_class == LeverClass::third && ideal > 1.0 + kAdvantageSlack);
}

void set_load_arm(const LoadSum& loads, LeverResult& result) {
    const double force_N = loads.force_N.norm();
    // Forces that cancel leave a rest of rounding, not a resultant.
    double gross_N = 0.0;
    for (const ForceReading& load : result.loads)
        gross_N += load.force_N.norm();
    if (force_N <= 1e-12 * gross_N)
        return;
    result.load_arm_m = std::abs(loads.torque_Nm) / force_N;
    if (*result.load_arm_m >= kSamePlace_m)
        result.ideal_advantage = result.effort_arm_m / *result.load_arm_m;
}

LeverStatus status_of(const LeverResult& result) {
    if (result.effort_arm_m < kSamePlace_m)
        return LeverStatus::effort_through_axis;
    if (!result.effort_N)
        return LeverStatus::friction_locks;
    if (*result.effort_N < 0.0)
        return LeverStatus::effort_reversed;
    const bool shares_a_place = result.class_reason == ClassReason::load_at_axis ||
                                result.class_reason == ClassReason::effort_at_axis ||
                                result.class_reason == ClassReason::effort_at_load;
    return shares_a_place ? LeverStatus::coincident_points : LeverStatus::ok;
}

void set_effort(const Lever& lever, const LoadSum& loads, const LoadSum& all, LeverResult& result) {
    const Vec2 along = unit_vector(lever.effort.direction_rad);
    const Vec2 point_m = point_at(lever.path_m, lever.effort.at_m);
    result.effort = read_force(result.axis_m, point_m, Vec2::Zero(), along);
    result.effort_arm_m = result.effort.arm_m;
    result.axis_reaction_N = -all.force_N;
    set_load_arm(loads, result);
    if (result.effort_arm_m < kSamePlace_m)
        return;

    const double signed_arm_m = cross(point_m - result.axis_m, along);
    const AxleEfforts efforts =
        efforts_with_axle_friction({all.torque_Nm, all.force_N, signed_arm_m, along,
                                    lever.friction.coefficient * lever.friction.radius_m});
    result.effort_holding_N = efforts.holding_N;
    if (!efforts.moving_N)
        return;
    // + 0.0 turns a negative zero into zero, so that no reading shows "-0".
    const double effort_N = *efforts.moving_N + 0.0;
    result.effort_N = effort_N;
    result.effort = read_force(result.axis_m, point_m, along * effort_N, along);
    result.torque_effort_Nm = result.effort.torque_Nm;
    result.torque_friction_Nm = -(result.torque_effort_Nm + all.torque_Nm);
    result.axis_reaction_N = -(all.force_N + result.effort.force_N);
    if (effort_N == 0.0)
        return;
    if (loads.force_N.norm() > 0.0)
        result.actual_advantage = loads.force_N.norm() / std::abs(effort_N);
    const double frictionless_N = -all.torque_Nm / signed_arm_m;
    if (frictionless_N * effort_N >= 0.0)
        result.efficiency = std::abs(frictionless_N / effort_N);
}

} // namespace

tl::expected<LeverResult, MechanicsError> solve_lever(const Lever& lever) {
    if (std::optional<MechanicsError> fault = check_lever(lever))
        return tl::unexpected(std::move(*fault));

    LeverResult result;
    result.axis_m = point_at(lever.path_m, lever.axis_at_m);
    result.loads.reserve(lever.loads.size());
    LoadSum loads;
    for (const Load& load : lever.loads) {
        result.loads.push_back(read_load(lever, result.axis_m, load));
        loads.add(result.loads.back());
    }
    const OwnWeight& own = lever.own_weight;
    const Vec2 centre_m =
        own.centre_at_m ? point_at(lever.path_m, *own.centre_at_m) : path_centroid(lever.path_m);
    result.own_weight = read_weight(lever, result.axis_m, centre_m, own.mass_kg);
    LoadSum all = loads;
    all.add(result.own_weight);
    result.torque_load_Nm = all.torque_Nm;

    set_effort(lever, loads, all, result);
    set_class(lever, result);
    result.status = status_of(result);
    return result;
}

HandBalance balance_by_hand(const Lever& lever, const LeverResult& solved, double hand_N) {
    const Vec2 along = unit_vector(lever.effort.direction_rad);
    HandBalance hand;
    hand.torque_effort_Nm = torque_about(solved.axis_m, {solved.effort.point_m, along * hand_N});
    hand.torque_load_Nm = solved.torque_load_Nm;
    Vec2 pulls_N = solved.own_weight.force_N + along * hand_N;
    for (const ForceReading& load : solved.loads)
        pulls_N += load.force_N;
    hand.axis_reaction_N = -pulls_N;
    const double turning_Nm = hand.torque_effort_Nm + hand.torque_load_Nm;
    const double held_Nm = lever.friction.coefficient * lever.friction.radius_m * pulls_N.norm();
    const double free_Nm = std::abs(turning_Nm) - held_Nm;
    hand.net_torque_Nm = free_Nm > 0.0 ? std::copysign(free_Nm, turning_Nm) : 0.0;
    return hand;
}

std::optional<double> travel_ratio(const LeverResult& solved, std::size_t load_index) {
    const double load_arm_m = solved.loads.at(load_index).arm_m;
    if (load_arm_m < kSamePlace_m)
        return std::nullopt;
    return solved.effort_arm_m / load_arm_m;
}

} // namespace steelyard::mechanics
