#pragma once
// The muscles of a hinge of the whole body: from a body's solved torques to muscle and joint
// forces.

#include "mechanics/body/solve_body.h"
#include "mechanics/muscle/muscle_lever.h"
#include "mechanics/muscle/muscle_solve.h"

#include <vector>

namespace steelyard::mechanics {

/// All that lies on the distal side of a hinge, cut free at its joint: weights, resistances and
/// supports, as the body's solution has them. At rest.
FreeBody free_body_at(const BodyCase& body_case, const BodyResult& result, Hinge hinge);

/// The muscles that turn a hinge; a hinge of the left side has those of its mirror image.
std::vector<Muscle> muscles_at(const std::vector<Muscle>& muscles, Hinge hinge);

/// One muscle in a pose, on the side of the hinge.
/// @return the pull, without an arm for a muscle known by name alone; or what is wrong with the
///         muscle's places on the body
tl::expected<Pull, MechanicsError> pull_on_body(const Muscle& muscle, const BodyCase& body_case,
                                                const BodyResult& result, Hinge hinge);

/// The muscles and the joint at one hinge.
struct HingeMuscles {
    std::vector<Pull> pulls;
    MuscleSolution solution;
    /// About the joint: one for each muscle, empty where its line is not known.
    std::vector<std::optional<MuscleLever>> levers;
    /// About the ball of a foot that stands on it: one for each muscle of the ankle, empty
    /// everywhere else and where the joint reaction is not known.
    std::vector<std::optional<MuscleLever>> levers_about_support;
};

/// Solves the muscles of a hinge for the torque that the body's solution asks of it, at rest or in
/// motion. Of all the muscles given those work that turn the hinge the way it is asked, and none
/// where a main mover of that joint action is missing or its arms do not hold in the pose: the
/// outcome not_modelled, also for a hinge without any muscle.
/// The joint reaction leaves out what muscles of the joint's other hinges and of neighbouring
/// joints that cross this one add: it is a lower estimate.
/// @param muscles those of muscles_at
tl::expected<HingeMuscles, MechanicsError> solve_muscles_at(const BodyCase& body_case,
                                                            const BodyResult& result, Hinge hinge,
                                                            const std::vector<Muscle>& muscles,
                                                            SharingRule rule);

} // namespace steelyard::mechanics
