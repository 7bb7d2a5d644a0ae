#pragma once
// One pose solved into a result that is used again: the step that sweeps and spreads repeat.

#include "mechanics/body/solve_body.h"

namespace steelyard::mechanics {

/// Solves a case that check_case has let pass, in a pose that check_pose has let pass.
/// @param body    in place of the case's own
/// @param motion  null at rest
/// @param result  overwritten; meaningless after an error
/// Does not allocate unless it returns an error.
tl::expected<void, MechanicsError> solve_pose(const BodyCase& body_case, const Body& body,
                                              const Pose& pose, const Motion* motion,
                                              BodyResult& result);

} // namespace steelyard::mechanics
