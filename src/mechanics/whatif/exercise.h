#pragma once
// One repetition of an exercise, and the largest torque that it asks of each joint.

#include "mechanics/body/solve_body.h"
#include "mechanics/range/sweep.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

/// A body that holds still or moves along a path, slowly or with a tempo.
struct Exercise {
    std::string name = "exercise";
    BodyCase body_case;
    std::optional<PosePath> path; ///< empty: the pose is held
    std::optional<Tempo> tempo;   ///< with a path only; empty: so slowly that only weights count
};

/// The hardest moment of a repetition for one hinge.
struct PeakTorque {
    Hinge hinge = Hinge::right_elbow_flexion;
    double torque_Nm = 0.0; ///< of the muscles where it is largest in size; signed like the hinge
    double progress = 0.0;  ///< where on the path, 0 to 1
};

/// What a repetition asks of some hinges.
struct RepetitionReading {
    std::vector<PeakTorque> peaks; ///< one for each hinge asked for, in order
    /// The first loss of balance on the way, or held/balanced/steadied.
    BalanceStatus balance = BalanceStatus::held;
};

/// Largest muscle torques of a repetition, found on a fine grid of places and then refined between
/// its points by Brent's minimisation, so that they change smoothly with the exercise.
/// @return the reading, or which input cannot be computed with anywhere on the path
tl::expected<RepetitionReading, MechanicsError> read_repetition(const Exercise& exercise,
                                                                const std::vector<Hinge>& hinges);

/// True for an outcome in which the body holds itself up.
bool holds_itself(BalanceStatus status);

} // namespace steelyard::mechanics
