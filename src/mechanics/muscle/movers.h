#pragma once
// Who moves a hinge the way it is asked in a pose, and whether the data has all of them.

#include "mechanics/muscle/muscle.h"
#include "mechanics/muscle/muscle_solve.h"

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// The muscles of a hinge, sorted for one movement.
struct Movers {
    std::vector<bool> take_part;          ///< one for each muscle given
    std::optional<MissingMovers> missing; ///< why no force may be said; empty when all are there
};

/// The joint action that a pose and the sense of a torque make it.
/// @param muscles  as for movers_of
/// @return null when the data has none
const JointAction* action_asked(const std::vector<Muscle>& muscles, const Pose& pose, Hinge hinge,
                                double muscle_Nm);

/// Sorts the muscles of a hinge by the joint action that it is asked for.
/// @param muscles    those of muscles_at; where none of them states an action they are taken as
///                   complete, but for an empty list
/// @param muscle_Nm  asked of the muscles, signed like the hinge
Movers movers_of(const std::vector<Muscle>& muscles, const Pose& pose, Hinge hinge,
                 double muscle_Nm);

} // namespace steelyard::mechanics
