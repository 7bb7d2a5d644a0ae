#include "mechanics/lever/lever_solve.h"

#include "mechanics/lever/axis_friction.h"
#include "mechanics/lever/lever_check.h"
#include "mechanics/lever/lever_class.h"
#include "mechanics/lever/lever_geometry.h"

#include <cmath>
#include <utility>

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

/// Balances a lever whose loads all have a size.
LeverResult solve_for(const Lever& lever, const SoughtEffort& /*sought*/) {
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

/// What a load of size 1 does: 1 N along its direction, of a couple 1 N·m.
struct UnitLoad {
    Vec2 force = Vec2::Zero();
    double torque = 0.0;
};

UnitLoad unit_of(const Lever& lever, const Vec2& axis_m, const Load& load) {
    if (std::holds_alternative<Couple>(load.action))
        return {Vec2::Zero(), 1.0};
    const auto* pull = std::get_if<PointForce>(&load.action);
    const Vec2 along = unit_vector(pull ? pull->direction_rad : kDown_rad);
    const double at_m = pull ? pull->at_m : std::get<Weight>(load.action).at_m;
    return {along, torque_about(axis_m, {point_at(lever.path_m, at_m), along})};
}

/// Gives a load a size [N, of a couple N·m]; the signed one of a solution on its way, too.
void set_size(double size, double gravity_m_s2, Load& load) {
    if (auto* pull = std::get_if<PointForce>(&load.action))
        pull->magnitude_N = size;
    else if (auto* weight = std::get_if<Weight>(&load.action))
        weight->mass_kg = gravity_m_s2 > 0.0 ? size / gravity_m_s2 : 0.0;
    else
        std::get<Couple>(load.action).torque_Nm = size;
}

/// Size of a load that the known forces just move against the friction of the axle; empty when the
/// axle holds them by itself.
/// @param known  torque and force of all else, the effort among them
std::optional<double> load_just_moved(const UnitLoad& unit, const LoadSum& known,
                                      double friction_radius_m) {
    if (unit.force.isZero()) { // a couple presses nothing onto the axle
        const double held_Nm = friction_radius_m * known.force_N.norm();
        if (held_Nm > 0.0 && std::abs(known.torque_Nm) <= held_Nm)
            return std::nullopt;
        return -std::copysign(std::abs(known.torque_Nm) - held_Nm, known.torque_Nm);
    }
    // The friction circle again, the load in the effort's part: what just keeps the rest from
    // winning is what the rest just moves.
    return efforts_with_axle_friction(
               {known.torque_Nm, known.force_N, unit.torque, unit.force, friction_radius_m})
        .holding_N;
}

/// Puts the known effort into a solution in which another one balances, or none.
void put_known_effort(const Lever& lever, double effort_N, LeverResult& result) {
    const Vec2 along = unit_vector(lever.effort.direction_rad);
    result.axis_reaction_N += result.effort.force_N - along * effort_N;
    result.effort = read_force(result.axis_m, result.effort.point_m, along * effort_N, along);
    result.torque_effort_Nm = result.effort.torque_Nm;
    result.torque_friction_Nm = 0.0;
    result.effort_N = effort_N;
    result.effort_holding_N = effort_N;
    result.actual_advantage.reset();
    result.efficiency.reset();
}

/// A weight or pull that must not be negative; a couple turns either way.
bool is_reversed(const Load& load, double size) {
    return size < 0.0 && !std::holds_alternative<Couple>(load.action);
}

LeverResult solve_for(const Lever& lever, const SoughtLoad& sought) {
    Lever filled = lever;
    Load& load = filled.loads[sought.load];
    set_size(0.0, lever.gravity_m_s2, load);
    const auto without = [&](LeverStatus status) {
        LeverResult result = solve_for(filled, SoughtEffort{});
        put_known_effort(filled, sought.effort_N, result);
        result.status = status;
        return result;
    };
    const LeverResult rest = solve_for(filled, SoughtEffort{});
    if (rest.effort_arm_m < kSamePlace_m)
        return without(LeverStatus::effort_through_axis);
    const UnitLoad unit = unit_of(lever, rest.axis_m, load);
    if (std::abs(unit.torque) < kSamePlace_m)
        return without(LeverStatus::load_through_axis);

    const Vec2 along = unit_vector(lever.effort.direction_rad);
    LoadSum known;
    for (const ForceReading& one : rest.loads)
        known.add(one);
    known.add(rest.own_weight);
    known.add(read_force(rest.axis_m, rest.effort.point_m, along * sought.effort_N, along));
    const auto found =
        load_just_moved(unit, known, lever.friction.coefficient * lever.friction.radius_m);
    if (!found)
        return without(LeverStatus::friction_locks);

    set_size(*found + 0.0, lever.gravity_m_s2, load);
    LeverResult result = solve_for(filled, SoughtEffort{});
    result.load_found = *found + 0.0;
    result.effort_N = sought.effort_N; // but for rounding it is that already
    if (is_reversed(load, *found))
        result.status = LeverStatus::load_reversed;
    return result;
}

LeverStatus status_of_supports(const LeverResult& result) {
    if (!result.effort_N)
        return LeverStatus::supports_at_one_place;
    // A push that is rounding is none: the beam just rests on the other support.
    const double least_N = -1e-9 * (result.axis_reaction_N.norm() + std::abs(*result.effort_N));
    if (result.axis_reaction_N.y() < least_N)
        return LeverStatus::first_support_lifts;
    return *result.effort_N < least_N ? LeverStatus::second_support_lifts : LeverStatus::ok;
}

/// Moments about the first support give the second one's push, as they give an effort's size; the
/// balance of forces gives the first one's.
LeverResult solve_for(const Lever& lever, const SoughtReactions& /*sought*/) {
    LeverResult result = solve_for(lever, SoughtEffort{});
    result.lever_class.reset();
    result.class_reason = ClassReason::two_supports;
    result.advantage_contradicts_class = false;
    result.ideal_advantage.reset();
    result.actual_advantage.reset();
    result.efficiency.reset();
    result.status = status_of_supports(result);
    return result;
}

} // namespace

tl::expected<LeverResult, MechanicsError> solve_lever(const Lever& lever) {
    if (std::optional<MechanicsError> fault = check_lever(lever))
        return tl::unexpected(std::move(*fault));
    return std::visit([&](const auto& sought) { return solve_for(lever, sought); }, lever.sought);
}

void fill_in_found_load(const LeverResult& solved, Lever& lever) {
    const std::optional<std::size_t> sought = sought_load(lever);
    if (!sought)
        return;
    Load& load = lever.loads.at(*sought);
    const double size = solved.load_found.value_or(0.0);
    set_size(is_reversed(load, size) ? 0.0 : size, lever.gravity_m_s2, load);
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
