#include "mechanics/range/sweep.h"

#include "mechanics/body/solve_pose.h"
#include "mechanics/bounds.h"
#include "mechanics/resistance/resistance_kinds.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

namespace {

using Checked = tl::expected<void, MechanicsError>;

/// A pull in the hinge's plane smaller than this part of the whole is rounding, and has no arm [-].
constexpr double kParallel = 1.0e-12;
constexpr double kLongestWay_s = 3600.0;

void resize(Sweep& out, std::size_t steps, std::size_t resistances) {
    out.steps = steps;
    out.resistances = resistances;
    out.progress.resize(steps);
    out.progress_rate.resize(steps);
    out.time_s.resize(steps);
    out.external_Nm.resize(steps);
    out.muscle_Nm.resize(steps);
    out.resistance_N.resize(steps * resistances);
    out.resistance_arm_m.resize(steps * resistances);
    out.balance.resize(steps);
    out.centre_of_pressure_m.resize(steps);
    out.potential_energy_J.resize(steps);
}

/// The forces of one resistance: neighbours in the result's list.
struct ForceRange {
    const BodyForce* first = nullptr;
    const BodyForce* last = nullptr;

    const BodyForce* begin() const { return first; }
    const BodyForce* end() const { return last; }
};

ForceRange forces_of(const ForceList& forces, std::size_t resistance) {
    const auto mine = [&](const BodyForce& force) {
        return force.origin == ForceOrigin::resistance && force.index == resistance;
    };
    const BodyForce* first = std::find_if(forces.begin(), forces.end(), mine);
    return {first, std::find_if_not(first, forces.end(), mine)};
}

/// Size of a resistance: of its resultant, or of one end where both ends pull on the body.
double size_of(const ForceRange& forces) {
    Vec3 sum_N = Vec3::Zero();
    for (const BodyForce& force : forces)
        sum_N += force.force_N;
    return std::max(sum_N.norm(), forces.begin()->force_N.norm());
}

/// Arm of the resultant of those forces that act at or beyond a segment about one of its hinges.
double resultant_arm(const Placement& placement, const ForceRange& forces, Segment moved,
                     const Vec3& axis) {
    double torque_Nm = 0.0;
    double size_N = 0.0;
    Vec3 in_plane_N = Vec3::Zero();
    for (const BodyForce& force : forces) {
        if (!is_at_or_beyond(force.segment, moved))
            continue;
        const Vec3 arm_m = force.point_m - placement[moved].joint_m;
        torque_Nm += axis.dot(arm_m.cross(force.force_N));
        in_plane_N += force.force_N - axis * axis.dot(force.force_N);
        size_N += force.force_N.norm();
    }
    const double in_plane = in_plane_N.norm();
    return in_plane > kParallel * size_N ? std::abs(torque_Nm) / in_plane : 0.0;
}

void write_arms(const Placement& placement, const ForceRange& forces, PerHinge& arm_m) {
    arm_m.fill(0.0);
    for (const BodyForce& force : forces) {
        for (Segment moved = force.segment; moved != Segment::pelvis;
             moved = segment_info(moved).parent) {
            const SegmentInfo& info = segment_info(moved);
            for (std::size_t k = 0; k < info.hinge_count; ++k) {
                const std::size_t hinge = info.first_hinge + k;
                arm_m[hinge] = resultant_arm(placement, forces, moved, placement.axes[hinge]);
            }
        }
    }
}

/// Energy of height of the body and of what it carries [J].
double potential_energy(const BodyCase& body_case, const BodyResult& result) {
    double energy_J = body_case.body.mass_kg * result.centre_of_mass_m.y();
    for (std::size_t i = 0; i < body_case.resistances.size(); ++i) {
        const double mass_kg = carried_mass(body_case.resistances[i]);
        if (mass_kg == 0.0)
            continue;
        const ForceRange forces = forces_of(result.forces, i);
        const double each_kg = mass_kg / static_cast<double>(forces.end() - forces.begin());
        for (const BodyForce& force : forces)
            energy_J += each_kg * force.point_m.y();
    }
    return energy_J * body_case.gravity_m_s2;
}

void write_step(const BodyCase& body_case, const BodyResult& result, std::size_t step, Sweep& out) {
    out.external_Nm[step] = result.external_Nm;
    out.muscle_Nm[step] = result.muscle_Nm;
    for (std::size_t i = 0; i < out.resistances; ++i) {
        const ForceRange forces = forces_of(result.forces, i);
        out.resistance_N[step * out.resistances + i] = size_of(forces);
        write_arms(result.placement, forces, out.resistance_arm_m[step * out.resistances + i]);
    }
    out.balance[step] = result.ground.status;
    out.centre_of_pressure_m[step] = result.ground.centre_of_pressure_m;
    out.potential_energy_J[step] = potential_energy(body_case, result);
}

Checked check_path(const BodyCase& body_case, const PosePath& path, std::size_t steps) {
    if (auto checked = check_case(body_case); !checked)
        return checked;
    if (auto checked = check_pose(body_case.body, body_case.pose); !checked)
        return checked;
    if (auto checked = check_way(body_case, path); !checked)
        return checked;
    if (steps < 2 || steps > kMaxSteps)
        return tl::unexpected(
            MechanicsError{Fault::out_of_range, "steps", "from 2 to 100000 steps"});
    return {};
}

Checked check_tempo(const Tempo& tempo) {
    for (const auto& [seconds, least, key] :
         {std::tuple(tempo.out_s, 0.05, "tempo.out"), std::tuple(tempo.hold_s, 0.0, "tempo.hold"),
          std::tuple(tempo.back_s, 0.05, "tempo.back")})
        if (auto fault =
                outside(seconds, least, kLongestWay_s, key,
                        least > 0.0 ? "from 0.05 to 3600 seconds" : "from 0 to 3600 seconds"))
            return tl::unexpected(*std::move(fault));
    return {};
}

/// Solves all steps; `state_at(step)` says where the repetition is and whether it moves.
template <typename StateAt>
Checked fill(const BodyCase& body_case, const PosePath& path, bool moves, StateAt state_at,
             Sweep& out) {
    Pose pose;
    Motion motion;
    BodyResult result;
    for (std::size_t step = 0; step < out.steps; ++step) {
        const TempoState state = state_at(step);
        out.progress[step] = state.progress;
        out.progress_rate[step] = state.rate_1_s;
        pose_and_motion_at(body_case.pose, path, state, pose, motion);
        auto solved =
            solve_pose(body_case, body_case.body, pose, moves ? &motion : nullptr, result);
        if (!solved)
            return solved;
        write_step(body_case, result, step, out);
    }
    return {};
}

} // namespace

tl::expected<void, MechanicsError> check_way(const BodyCase& body_case, const PosePath& path) {
    Pose pose = body_case.pose;
    pose.angle_rad = path.end_angle_rad;
    if (auto checked = check_pose(body_case.body, pose); !checked)
        return tl::unexpected(within_key("end", checked.error()));
    if (!path.halfway_rad)
        return {};
    pose.angle_rad = *path.halfway_rad;
    if (auto checked = check_pose(body_case.body, pose); !checked)
        return tl::unexpected(within_key("halfway", checked.error()));
    return {};
}

tl::expected<void, MechanicsError> sweep_into(const BodyCase& body_case, const PosePath& path,
                                              std::size_t steps, Sweep& out) {
    if (auto checked = check_path(body_case, path, steps); !checked)
        return checked;
    resize(out, steps, body_case.resistances.size());
    std::fill(out.time_s.begin(), out.time_s.end(), 0.0);
    out.step_width = 1.0 / static_cast<double>(steps - 1);
    const auto state_at = [&](std::size_t step) {
        return TempoState{static_cast<double>(step) / static_cast<double>(steps - 1), 1.0, 0.0};
    };
    return fill(body_case, path, false, state_at, out);
}

tl::expected<Sweep, MechanicsError> sweep(const BodyCase& body_case, const PosePath& path,
                                          std::size_t steps) {
    Sweep out;
    if (auto done = sweep_into(body_case, path, steps, out); !done)
        return tl::unexpected(done.error());
    return out;
}

tl::expected<Sweep, MechanicsError> sweep_in_motion(const BodyCase& body_case, const PosePath& path,
                                                    const Tempo& tempo, std::size_t steps) {
    if (auto checked = check_tempo(tempo); !checked)
        return tl::unexpected(checked.error());
    if (auto checked = check_path(body_case, path, steps); !checked)
        return tl::unexpected(checked.error());
    Sweep out;
    resize(out, steps, body_case.resistances.size());
    out.step_width = duration_s(tempo) / static_cast<double>(steps - 1);
    const auto state_at = [&](std::size_t step) {
        out.time_s[step] = out.step_width * static_cast<double>(step);
        return tempo_state(tempo, out.time_s[step]);
    };
    if (auto done = fill(body_case, path, true, state_at, out); !done)
        return tl::unexpected(done.error());
    return out;
}

} // namespace steelyard::mechanics
