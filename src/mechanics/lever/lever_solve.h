#pragma once
// The lever solved: the effort that balances it, the reaction of the axis, both advantages, the
// class and why.

#include "mechanics/error.h"
#include "mechanics/lever/lever.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// What lies in the middle, along the lever: the axis, the load or the effort.
enum class LeverClass { first = 1, second = 2, third = 3 };

/// Why the class is what it is, or why there is none.
enum class ClassReason {
    axis_between,   ///< first class
    load_between,   ///< second class
    effort_between, ///< third class
    no_placed_load, ///< only couples, or no load: nothing to put in order
    load_at_axis,   ///< load and axis share a place
    effort_at_axis, ///< effort and axis share a place
    effort_at_load, ///< effort and load share a place
    loads_disagree, ///< several loads, of different classes
    two_supports,   ///< a beam on two supports: nothing turns about one axis
};

/// How the solution turned out. Every outcome but ok is a special case that a learner should see
/// explained, not an error.
enum class LeverStatus {
    ok,
    effort_through_axis, ///< the effort's line passes through the axis: no size of it can balance
    effort_reversed,     ///< the effort found is negative: it must pull the other way
    coincident_points,   ///< solved, but two of axis, effort and load share a place: no class
    friction_locks,      ///< the axis grips so hard that no effort along this line turns the lever
    load_through_axis,   ///< the sought load's line passes through the axis: no size balances
    load_reversed,       ///< the load found is negative: it would have to pull the other way
    supports_at_one_place, ///< two supports that bear as one: their shares are undetermined
    first_support_lifts,   ///< the beam would have to be held down there, or it tips
    second_support_lifts,  ///< the same at the second support
};

/// One force on the lever and what it does about the axis.
struct ForceReading {
    Vec2 point_m = Vec2::Zero(); ///< where it acts; for a couple the axis
    Vec2 force_N = Vec2::Zero(); ///< zero for a couple
    double torque_Nm = 0.0;      ///< about the axis, counter-clockwise positive
    double arm_m = 0.0;          ///< moment arm, >= 0; 0 for a couple
    Vec2 foot_m = Vec2::Zero();  ///< foot of the perpendicular from the axis to the line of action
};

/// The whole solution. Every number in it is finite.
struct LeverResult {
    LeverStatus status = LeverStatus::ok;

    std::optional<LeverClass> lever_class;
    ClassReason class_reason = ClassReason::no_placed_load;
    /// True when oblique pulls make the arms contradict what the class usually implies: a second
    /// class with an ideal advantage below 1, or a third class with one above 1.
    bool advantage_contradicts_class = false;

    Vec2 axis_m = Vec2::Zero();
    std::vector<ForceReading> loads; ///< one for each load of the lever, in its order
    ForceReading own_weight;         ///< all zero but the point for a weightless lever
    /// The effort as it must act: force and torque zero when it cannot balance; a reversed effort
    /// stands here with the direction it must have.
    ForceReading effort;

    /// Size of the sought load along its stated direction [N], of a couple [N·m]; negative = it
    /// would have to pull the other way. Empty when none is sought, or no size of it balances.
    std::optional<double> load_found;

    /// Size of the effort along its stated direction [N]: what was known, or was found; of two
    /// supports the second one's push; negative = it must pull the other way;
    /// empty when no size can balance. With axis friction: the effort that just moves the load.
    std::optional<double> effort_N;
    /// With axis friction, the effort at which the load just begins to win [N]; between this and
    /// effort_N the lever stays where it is. Equal to effort_N without friction.
    std::optional<double> effort_holding_N;

    double torque_load_Nm = 0.0;   ///< of all loads and the own weight, counter-clockwise positive
    double torque_effort_Nm = 0.0; ///< of the effort found, counter-clockwise positive
    double torque_friction_Nm = 0.0; ///< of the axis friction when the effort just moves the load
    Vec2 axis_reaction_N = Vec2::Zero(); ///< force of the support on the lever

    double effort_arm_m = 0.0; ///< moment arm of the effort, >= 0
    /// Moment arm of the loads' resultant, own weight left out [m]: |torque| / |resultant force|.
    /// Empty when the resultant is zero (couples only, or loads that cancel).
    std::optional<double> load_arm_m;

    /// Ideal mechanical advantage: effort arm / load arm. Empty when the load arm is 0 or empty.
    std::optional<double> ideal_advantage;
    /// Actual mechanical advantage: resultant load / |effort|, own weight and friction included.
    /// Empty when there is no effort to compare with, or it is zero.
    std::optional<double> actual_advantage;
    /// |effort without axis friction| / |effort|, from 0 to 1: what part of the work put in comes
    /// out again. Empty when there is no effort, or when the effort found helps friction less than
    /// it needs none (the load moves by itself).
    std::optional<double> efficiency;
};

/// Solves a lever for what is sought of it by the balance of moments about the axis, then for the
/// reaction by the balance of forces. A sought load counts with the size that is found, not with
/// what it says of itself. With axis friction it is the load that the effort just moves.
/// A beam on two supports has neither class nor advantages.
/// @return the solution, or which input cannot be computed with (not finite, absurd, off the
///         lever, no length).
/// Source: static equilibrium, OpenStax College Physics 2e, chapter 9; axle friction as the
/// friction circle of radius coefficient × axle radius, from any statics text.
tl::expected<LeverResult, MechanicsError> solve_lever(const Lever& lever);

/// Takes the size that was found into the sought load, so that it says of itself what it is: 0
/// where no size balances or it would have to pull the other way.
/// @param solved  solve_lever's result for the same lever
void fill_in_found_load(const LeverResult& solved, Lever& lever);

/// The lever with the effort set by hand instead of solved for.
struct HandBalance {
    double torque_effort_Nm = 0.0; ///< of the hand, counter-clockwise positive
    double torque_load_Nm = 0.0;   ///< of loads and own weight, counter-clockwise positive
    /// What is left over: turns the lever its way, counter-clockwise positive [N·m]. Zero when the
    /// two balance, or when axis friction holds the difference.
    double net_torque_Nm = 0.0;
    Vec2 axis_reaction_N = Vec2::Zero(); ///< force of the support on the lever, at rest
};

/// What the lever does when the hand pulls with a given force along the effort's direction.
/// @param solved   solve_lever's result for the same lever
/// @param hand_N   pull along the effort's direction [N]; negative = the other way
HandBalance balance_by_hand(const Lever& lever, const LeverResult& solved, double hand_N);

/// How far the hand moves for a small movement of a load along its own line of action [-]:
/// effort arm / that load's arm. Empty when the load's arm is 0.
/// The trade of the lever: what is won in force is lost in distance.
std::optional<double> travel_ratio(const LeverResult& solved, std::size_t load_index);

} // namespace steelyard::mechanics
