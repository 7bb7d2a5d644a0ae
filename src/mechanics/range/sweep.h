#pragma once
// A repetition: the body swept along a path of poses.

#include "mechanics/body/solve_body.h"
#include "mechanics/range/pose_path.h"

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// Seconds for the way out, the hold at its end and the way back.
struct Tempo {
    double out_s = 2.0;  ///< [s], > 0
    double hold_s = 0.0; ///< [s], >= 0
    double back_s = 2.0; ///< [s], > 0
};

/// The tempo in which an exercise is shown that has none of its own: unhurried.
inline constexpr Tempo kUsualTempo{2.0, 0.5, 2.0};

/// Smooth out, hold and back: each way is the minimum-jerk curve 10 u³ - 15 u⁴ + 6 u⁵ of its
/// elapsed fraction u, with no velocity or acceleration at either end. Before 0 and after the end
/// the body rests at the start.
/// Source: Flash & Hogan 1985, J Neurosci 5:1688 (from memory).
TempoState tempo_state(const Tempo& tempo, double time_s);

double duration_s(const Tempo& tempo);

/// The curves, one row for each step. Rows stand one after the other in flat storage.
struct Sweep {
    std::size_t steps = 0;
    std::size_t resistances = 0;
    std::vector<double> progress;      ///< steps
    std::vector<double> progress_rate; ///< steps: of progress with time [1/s]; 1 without a tempo
    double step_width = 0.0;    ///< between steps, in time [s] or without a tempo in progress
    std::vector<double> time_s; ///< steps; all 0 without a tempo
    std::vector<PerHinge> external_Nm;      ///< steps
    std::vector<PerHinge> muscle_Nm;        ///< steps
    std::vector<double> resistance_N;       ///< steps × resistances: size of each one's pull
    std::vector<PerHinge> resistance_arm_m; ///< steps × resistances; for forces on both sides of
                                            ///< the body that of its first force; 0 for hinges it
                                            ///< does not load
    std::vector<BalanceStatus> balance;     ///< steps
    std::vector<Vec3> centre_of_pressure_m; ///< steps
    std::vector<double> potential_energy_J; ///< steps: body and carried weights, above y = 0

    double force_N(std::size_t step, std::size_t resistance) const {
        return resistance_N[step * resistances + resistance];
    }
    double arm_m(std::size_t step, std::size_t resistance, Hinge hinge) const {
        return resistance_arm_m[step * resistances + resistance][index_of(hinge)];
    }
};

/// Most steps of a sweep.
inline constexpr std::size_t kMaxSteps = 100000;

/// Checks the poses half-way and at the end of a path; keys in errors start with "halfway." or
/// "end.".
tl::expected<void, MechanicsError> check_way(const BodyCase& body_case, const PosePath& path);

/// Sweeps at rest in every pose, `steps` poses evenly spaced from progress 0 to 1 (2 or more).
tl::expected<Sweep, MechanicsError> sweep(const BodyCase& body_case, const PosePath& path,
                                          std::size_t steps);

/// The same into an old sweep, whose storage is used again: allocates nothing when its sizes fit.
tl::expected<void, MechanicsError> sweep_into(const BodyCase& body_case, const PosePath& path,
                                              std::size_t steps, Sweep& out);

/// Sweeps one repetition in motion, `steps` instants evenly spaced in time.
tl::expected<Sweep, MechanicsError> sweep_in_motion(const BodyCase& body_case, const PosePath& path,
                                                    const Tempo& tempo, std::size_t steps);

/// What a curve of one hinge shows.
struct HingeSummary {
    Hinge hinge = Hinge::right_elbow_flexion;
    double peak_Nm = 0.0;               ///< muscle torque of the largest size, with its sign
    double peak_progress = 0.0;         ///< where: the hardest point of the path
    double peak_angle_rad = 0.0;        ///< the hinge's angle there
    double least_Nm = 0.0;              ///< size of the smallest muscle torque
    std::vector<double> zero_crossings; ///< progress where the torque changes sign
    /// Work of the muscles about this hinge from the first to the last step, ∫ torque d(angle) [J];
    /// positive = they shorten on the whole.
    double work_J = 0.0;
};

HingeSummary summarise(const BodyCase& body_case, const PosePath& path, const Sweep& sweep,
                       Hinge hinge);

/// Work of all muscles together along the sweep [J]: for weights alone it equals the change of
/// potential energy.
double total_work_J(const BodyCase& body_case, const PosePath& path, const Sweep& sweep);

} // namespace steelyard::mechanics
