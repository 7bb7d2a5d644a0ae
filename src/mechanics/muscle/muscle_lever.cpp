#include "mechanics/muscle/muscle_lever.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::mechanics {
namespace {

/// A force below it does not count as a load [N].
constexpr double kNoForce_N = 1.0e-9;
/// A torque below it turns nothing [N·m].
constexpr double kNoTorque_Nm = 1.0e-9;

Classification classify_together(const std::vector<Classification>& each,
                                 const std::vector<bool>& counts) {
    Classification whole;
    for (std::size_t i = 0; i < each.size(); ++i) {
        const Classification& one = each[i];
        if (!counts[i])
            continue;
        if (one.lever_class && whole.lever_class && one.lever_class != whole.lever_class)
            return {std::nullopt, ClassReason::loads_disagree};
        if (one.lever_class || whole.reason == ClassReason::no_placed_load)
            whole = one;
    }
    return whole;
}

std::vector<NamedForce> with_a_size(const std::vector<NamedForce>& forces) {
    std::vector<NamedForce> kept;
    for (const NamedForce& force : forces)
        if (force.force_N.norm() > kNoForce_N)
            kept.push_back(force);
    return kept;
}

NamedForce pull_of(const Pull& pull, const MuscleReading& reading) {
    return {pull.muscle, pull.line->insertion_m, reading.tension_N * pull.line->direction};
}

/// A solved free body: what stays the same about every pivot.
struct SolvedBody {
    const FreeBody& body;
    const std::vector<Pull>& pulls;
    const MuscleSolution& solution;
};

/// Torque of a muscle about a pivot. About the joint a muscle counts by its moment arm, which may
/// come from a table and not from its line; the way from the joint to another pivot is geometry.
double muscle_torque(const SolvedBody& solved, std::size_t i, const Vec3& pivot_m) {
    const MuscleReading& reading = solved.solution.muscles[i];
    if (!solved.pulls[i].line)
        return reading.torque_Nm;
    const Vec3 force_N = reading.tension_N * solved.pulls[i].line->direction;
    return reading.torque_Nm +
           (solved.body.axis_m - pivot_m).cross(force_N).dot(solved.body.axis_direction);
}

/// Torque about a pivot of every force on the free body.
double net_torque(const SolvedBody& solved, const Vec3& pivot_m) {
    const Vec3& axis = solved.body.axis_direction;
    double torque_Nm =
        (resultant_about(pivot_m, outside_forces(solved.body)).torque_Nm + solved.body.couple_Nm)
            .dot(axis);
    for (std::size_t i = 0; i < solved.pulls.size(); ++i)
        torque_Nm += muscle_torque(solved, i, pivot_m);
    if (solved.solution.joint_reaction_N)
        torque_Nm +=
            (solved.body.axis_m - pivot_m).cross(*solved.solution.joint_reaction_N).dot(axis);
    return torque_Nm;
}

/// Torque of a load about a pivot.
double turn_of(const NamedForce& load, const Vec3& pivot_m, const FreeBody& body) {
    return (load.point_m - pivot_m).cross(load.force_N).dot(body.axis_direction);
}

/// Which loads turn the other way than the muscle; all of them where none does (a muscle that
/// rests).
std::vector<bool> opposing(const std::vector<NamedForce>& loads, const Vec3& pivot_m,
                           double muscle_turn, const FreeBody& body) {
    std::vector<bool> oppose(loads.size());
    for (std::size_t i = 0; i < loads.size(); ++i)
        oppose[i] = turn_of(loads[i], pivot_m, body) * muscle_turn < 0.0;
    const bool any = std::find(oppose.begin(), oppose.end(), true) != oppose.end();
    return any ? oppose : std::vector<bool>(loads.size(), true);
}

/// The class about a pivot by one load.
/// @param muscle_turn  the way in which the muscle turns about the pivot, by its sign
Classification class_by(const NamedForce& load, const NamedForce& effort, const Vec3& pivot_m,
                        double muscle_turn, const FreeBody& body) {
    if (body.bar == LeverBar::vertebra) {
        const double turn = turn_of(load, pivot_m, body);
        return turn * muscle_turn < 0.0 && std::abs(turn) > kNoTorque_Nm
                   ? Classification{LeverClass::first, ClassReason::axis_between}
                   : Classification{};
    }
    const auto along_m = [&](const NamedForce& force) {
        const Vec3 point_m =
            force.beyond_bone ? Vec3(body.axis_m + body.bone_m * body.along) : force.point_m;
        return (point_m - pivot_m).dot(body.along);
    };
    return classify_places(0.0, along_m(load), along_m(effort));
}

MuscleLever seen_about(const Vec3& pivot_m, const SolvedBody& solved, std::size_t muscle_index,
                       std::vector<NamedForce> loads) {
    const FreeBody& body = solved.body;
    MuscleLever lever;
    lever.free_body = body.name;
    lever.pivot_m = pivot_m;
    lever.effort = pull_of(solved.pulls[muscle_index], solved.solution.muscles[muscle_index]);
    lever.effort_torque_Nm = muscle_torque(solved, muscle_index, pivot_m);
    // A muscle at rest turns nothing, but would turn the joint by its arm.
    const double muscle_turn =
        lever.effort_torque_Nm != 0.0 ? lever.effort_torque_Nm : solved.pulls[muscle_index].arm_m;
    for (const NamedForce& load : loads)
        lever.of_loads.push_back(class_by(load, lever.effort, pivot_m, muscle_turn, body));
    lever.of_whole = classify_together(lever.of_loads, opposing(loads, pivot_m, muscle_turn, body));

    const Resultant load = resultant_about(pivot_m, loads);
    lever.load_torque_Nm = load.torque_Nm.dot(body.axis_direction);
    lever.net_torque_Nm = net_torque(solved, pivot_m);
    const double tension_N = lever.effort.force_N.norm();
    if (tension_N > kNoForce_N) {
        lever.effort_arm_m = std::abs(lever.effort_torque_Nm) / tension_N;
        lever.advantage = load.force_N.norm() / tension_N;
    }
    lever.loads = std::move(loads);
    return lever;
}

} // namespace

std::optional<MuscleLever> lever_about_joint(const FreeBody& body, const std::vector<Pull>& pulls,
                                             const MuscleSolution& solution,
                                             std::size_t muscle_index) {
    assert(muscle_index < pulls.size() && pulls.size() == solution.muscles.size());
    if (!pulls[muscle_index].line)
        return std::nullopt;
    std::vector<NamedForce> loads = with_a_size(body.loads);
    const double arm_m = pulls[muscle_index].arm_m;
    const bool any_opposes = std::any_of(loads.begin(), loads.end(), [&](const NamedForce& load) {
        return turn_of(load, body.axis_m, body) * arm_m < -kNoTorque_Nm * std::abs(arm_m);
    });
    // Where the loads only help, the muscle works against the weight of the parts themselves.
    if (loads.empty() || (!any_opposes && solution.muscles[muscle_index].tension_N > kNoForce_N))
        loads = with_a_size(outside_forces(body));
    return seen_about(body.axis_m, {body, pulls, solution}, muscle_index, std::move(loads));
}

std::optional<MuscleLever> lever_about_support(const FreeBody& body, const std::vector<Pull>& pulls,
                                               const MuscleSolution& solution,
                                               std::size_t muscle_index,
                                               std::size_t support_index) {
    assert(muscle_index < pulls.size() && pulls.size() == solution.muscles.size());
    assert(support_index < body.loads.size());
    if (!pulls[muscle_index].line || !solution.joint_reaction_N)
        return std::nullopt;
    std::vector<NamedForce> loads{{"joint reaction", body.axis_m, *solution.joint_reaction_N}};
    for (std::size_t i = 0; i < body.loads.size(); ++i)
        if (i != support_index)
            loads.push_back(body.loads[i]);
    return seen_about(body.loads[support_index].point_m, {body, pulls, solution}, muscle_index,
                      with_a_size(loads));
}

} // namespace steelyard::mechanics
