#include "mechanics/muscle/muscle_solve.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {
namespace {

enum class ArmLength { preferred, shortest, longest };

/// Arm of a pull in the direction that is needed: positive when it helps.
double helping_arm(const Pull& pull, double needed_sign, ArmLength length) {
    const double low = pull.arm_range_m.low * needed_sign;
    const double high = pull.arm_range_m.high * needed_sign;
    switch (length) {
    case ArmLength::shortest:
        return std::min(low, high);
    case ArmLength::longest:
        return std::max(low, high);
    case ArmLength::preferred:
        break;
    }
    return pull.arm_m * needed_sign;
}

double share(SharingRule rule, double arm_m, const Pull& pull) {
    switch (rule) {
    case SharingRule::equal_stress:
        return pull.area_m2.value_or(1.0);
    case SharingRule::least_squared_stress:
        return arm_m * pull.area_m2.value_or(1.0) * pull.area_m2.value_or(1.0);
    case SharingRule::equal_force:
        break;
    }
    return 1.0;
}

/// Tensions that make the torque, muscles with too short an arm or a wrong one silent; empty when
/// no muscle can.
std::optional<std::vector<double>> share_out(double torque_Nm, const std::vector<Pull>& pulls,
                                             SharingRule rule, ArmLength length) {
    const double sign = torque_Nm < 0.0 ? -1.0 : 1.0;
    std::vector<double> tensions_N(pulls.size(), 0.0);
    double torque_per_share = 0.0;
    for (std::size_t i = 0; i < pulls.size(); ++i) {
        // Who works is decided by the preferred arm, so that the range belongs to the same muscles.
        if (!pulls[i].takes_part ||
            helping_arm(pulls[i], sign, ArmLength::preferred) < kShortestArm_m)
            continue;
        const double arm_m = helping_arm(pulls[i], sign, length);
        if (arm_m < kShortestArm_m)
            return std::nullopt;
        tensions_N[i] = share(rule, arm_m, pulls[i]);
        torque_per_share += arm_m * tensions_N[i];
    }
    if (torque_per_share <= 0.0)
        return std::nullopt;
    for (double& tension_N : tensions_N)
        tension_N *= std::abs(torque_Nm) / torque_per_share;
    return tensions_N;
}

/// Force that the muscles with a line put on the free body, and the tension of those without one.
struct MuscleForce {
    Vec3 known_N = Vec3::Zero();
    double undirected_N = 0.0;
};

MuscleForce force_of(const std::vector<Pull>& pulls, const std::vector<double>& tensions_N) {
    MuscleForce sum;
    for (std::size_t i = 0; i < pulls.size(); ++i)
        if (pulls[i].line)
            sum.known_N += tensions_N[i] * pulls[i].line->direction;
        else
            sum.undirected_N += tensions_N[i];
    return sum;
}

/// Smallest distance from the origin to the straight line between two vectors' ends.
double nearest_to_origin(const Vec3& one, const Vec3& other) {
    const Vec3 step = other - one;
    const double length_squared = step.squaredNorm();
    if (length_squared == 0.0)
        return one.norm();
    return (one + std::clamp(-one.dot(step) / length_squared, 0.0, 1.0) * step).norm();
}

/// Sizes the reaction can have between the case with long arms (little tension) and short arms.
Interval reaction_range(const JointDemand& demand, const MuscleForce& preferred,
                        const MuscleForce& least, const MuscleForce& most) {
    const Vec3 at_preferred = demand.force_N - preferred.known_N;
    const Vec3 at_least = demand.force_N - least.known_N;
    const Vec3 at_most = demand.force_N - most.known_N;
    const double undirected_N =
        std::max({preferred.undirected_N, least.undirected_N, most.undirected_N});
    const double smallest = std::min(at_preferred.norm(), nearest_to_origin(at_least, at_most));
    const double largest = std::max({at_preferred.norm(), at_least.norm(), at_most.norm()});
    if (undirected_N == 0.0)
        return {smallest, largest};
    // A pull of unknown direction can lie with or against all else.
    const double least_undirected_N =
        std::min({preferred.undirected_N, least.undirected_N, most.undirected_N});
    return {std::max({0.0, smallest - undirected_N, least_undirected_N - largest}),
            largest + undirected_N};
}

tl::expected<void, MechanicsError> check_pulls(const std::vector<Pull>& pulls, SharingRule rule) {
    if (pulls.empty())
        return tl::unexpected(MechanicsError{Fault::inconsistent, "muscles", "one muscle or more"});
    const auto working =
        std::count_if(pulls.begin(), pulls.end(), [](const Pull& pull) { return pull.takes_part; });
    for (const Pull& pull : pulls) {
        if (!std::isfinite(pull.arm_m) || !std::isfinite(pull.arm_range_m.low) ||
            !std::isfinite(pull.arm_range_m.high))
            return tl::unexpected(
                MechanicsError{Fault::not_finite, pull.muscle + ".arm", "a finite moment arm"});
        const bool shares = pull.takes_part && working > 1;
        if (shares && rule != SharingRule::equal_force && !(pull.area_m2 && *pull.area_m2 > 0.0))
            return tl::unexpected(MechanicsError{
                Fault::inconsistent, pull.muscle + ".cross_section",
                "a cross-section above 0 for each muscle, or the sharing rule equal force"});
    }
    return {};
}

MuscleOutcome outcome_without_tension(double torque_Nm, const std::vector<Pull>& pulls) {
    const double sign = torque_Nm < 0.0 ? -1.0 : 1.0;
    const bool opposes = std::any_of(pulls.begin(), pulls.end(), [sign](const Pull& pull) {
        return pull.takes_part && pull.arm_m * sign <= -kShortestArm_m;
    });
    return opposes ? MuscleOutcome::antagonists_work : MuscleOutcome::no_arm;
}

std::vector<MuscleReading> readings_of(const std::vector<Pull>& pulls,
                                       const std::vector<double>& tensions_N) {
    std::vector<MuscleReading> readings(pulls.size());
    for (std::size_t i = 0; i < pulls.size(); ++i) {
        readings[i].muscle = pulls[i].muscle;
        readings[i].arm_m = pulls[i].arm_m;
        readings[i].tension_N = tensions_N[i];
        readings[i].most_N = pulls[i].most_N;
        readings[i].torque_Nm = pulls[i].arm_m * tensions_N[i];
    }
    return readings;
}

bool pulls_beyond_cross_section(const MuscleReading& reading) {
    return reading.most_N && reading.tension_N > *reading.most_N;
}

void add_ranges(MuscleSolution& solution, const JointDemand& demand, const std::vector<Pull>& pulls,
                SharingRule rule, const std::vector<double>& tensions_N) {
    const auto least = share_out(demand.torque_Nm, pulls, rule, ArmLength::longest);
    const auto most = share_out(demand.torque_Nm, pulls, rule, ArmLength::shortest);
    if (!least || !most)
        return;
    for (std::size_t i = 0; i < pulls.size(); ++i) {
        const auto [low, high] = std::minmax({tensions_N[i], (*least)[i], (*most)[i]});
        solution.muscles[i].tension_range_N = Interval{low, high};
    }
    solution.joint_reaction_range_N = reaction_range(
        demand, force_of(pulls, tensions_N), force_of(pulls, *least), force_of(pulls, *most));
}

} // namespace

SharingRule usual_sharing(const std::vector<Muscle>& muscles) {
    const bool all_have_areas =
        std::all_of(muscles.begin(), muscles.end(), [](const Muscle& muscle) {
            return muscle.cross_section.has_value() || !muscle.is_known();
        });
    return all_have_areas ? SharingRule::equal_stress : SharingRule::equal_force;
}

tl::expected<MuscleSolution, MechanicsError> solve_muscles(const JointDemand& demand,
                                                           const std::vector<Pull>& pulls,
                                                           SharingRule rule,
                                                           const JointAxis& axis) {
    if (auto checked = check_pulls(pulls, rule); !checked)
        return tl::unexpected(checked.error());
    if (!std::isfinite(demand.torque_Nm) || !demand.force_N.allFinite())
        return tl::unexpected(
            MechanicsError{Fault::not_finite, "torque", "a finite torque and force"});

    MuscleSolution solution;
    solution.torque_asked_Nm = demand.torque_Nm;
    std::vector<double> tensions_N(pulls.size(), 0.0);
    if (std::abs(demand.torque_Nm) < kNothingAsked_Nm)
        solution.outcome = MuscleOutcome::no_torque;
    else if (auto shared = share_out(demand.torque_Nm, pulls, rule, ArmLength::preferred))
        tensions_N = *shared;
    else
        solution.outcome = outcome_without_tension(demand.torque_Nm, pulls);

    solution.muscles = readings_of(pulls, tensions_N);
    for (std::size_t i = 0; i < pulls.size(); ++i)
        if (pulls[i].line)
            solution.muscles[i].parts = parts_of_pull(*pulls[i].line, tensions_N[i], axis);
    if (std::any_of(solution.muscles.begin(), solution.muscles.end(), pulls_beyond_cross_section))
        solution.outcome = MuscleOutcome::beyond_cross_section;
    if (solution.outcome == MuscleOutcome::balanced)
        add_ranges(solution, demand, pulls, rule, tensions_N);
    const MuscleForce force = force_of(pulls, tensions_N);
    const bool all_directions_known = force.undirected_N == 0.0;
    if (solution.outcome == MuscleOutcome::no_torque ||
        (solution.outcome == MuscleOutcome::balanced && all_directions_known))
        solution.joint_reaction_N = demand.force_N - force.known_N;
    return solution;
}

MuscleSolution not_modelled(const JointDemand& demand, const std::vector<Pull>& pulls,
                            MissingMovers missing) {
    MuscleSolution solution;
    solution.outcome = MuscleOutcome::not_modelled;
    solution.torque_asked_Nm = demand.torque_Nm;
    solution.muscles = readings_of(pulls, std::vector<double>(pulls.size(), 0.0));
    solution.missing = std::move(missing);
    return solution;
}

tl::expected<MuscleSolution, MechanicsError>
solve_muscles(const FreeBody& body, const std::vector<Pull>& pulls, SharingRule rule) {
    const auto demand = demand_on_joint(body);
    if (!demand)
        return tl::unexpected(demand.error());
    return solve_muscles(*demand, pulls, rule, {body.axis_m, body.axis_direction});
}

} // namespace steelyard::mechanics
