#pragma once
// Muscle force and joint reaction through a range of motion.

#include "mechanics/muscle/muscle_on_body.h"
#include "mechanics/range/sweep.h"

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// One place of the path.
struct MuscleStep {
    double progress = 0.0; ///< 0 start, 1 end of the path
    double time_s = 0.0;   ///< 0 without a tempo
    double angle_rad = 0.0;
    double torque_Nm = 0.0;  ///< asked of the muscles
    MuscleSolution solution; ///< one reading for each muscle, in the order given
};

/// Solves the muscles of a hinge at places evenly spaced over the path, or over time with a tempo.
/// @param muscles  those of muscles_at
/// @param steps    2 to kMaxSteps
tl::expected<std::vector<MuscleStep>, MechanicsError>
sweep_muscles(const BodyCase& body_case, const std::optional<PosePath>& path,
              const std::optional<Tempo>& tempo, Hinge hinge, const std::vector<Muscle>& muscles,
              SharingRule rule, std::size_t steps);

} // namespace steelyard::mechanics
