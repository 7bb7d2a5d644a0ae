#pragma once
// How each reading of a body was computed, with this setup's own numbers.
//
// Symbols: F force, W weight, r distance from the joint to where a force acts and d moment arm,
// both seen along the axis; τ torque, signed like the hinge: positive pushes it in its positive
// direction (into flexion); T pull of a muscle, R joint reaction.

#include "mechanics/muscle/muscle_on_body.h"
#include "words/computed_step.h"

#include <optional>
#include <vector>

namespace steelyard::words {

enum class BodyQuantity {
    torque,         ///< that the muscles must give about the hinge
    torque_of_both, ///< the same of both sides of a paired joint together
    load_arm,       ///< of the force that drives the hinge
    muscles,        ///< pull of all muscles of the hinge together
    joint_reaction, ///< of the joint
};

/// A hinge of a solved body and what was solved for it.
struct ExplainedHinge {
    const mechanics::BodyCase& body_case; ///< in the pose that was solved
    const mechanics::BodyResult& result;  ///< at rest
    mechanics::Hinge hinge;
    const std::vector<mechanics::Muscle>& listed; ///< the muscles, in the order of `muscles`
    mechanics::SharingRule rule;
    const mechanics::HingeMuscles* muscles = nullptr; ///< null when they cannot be solved
};

/// The computation, first step first; the last step with a value is the reading itself. What cannot
/// be computed gives one step that says why.
/// @param load  index into result.forces of the force for load_arm
std::vector<ComputedStep> body_steps(BodyQuantity quantity, const ExplainedHinge& at,
                                     std::optional<std::size_t> load, setup::UnitSystem units);

/// The name of a force on the body: "dumbbell", "ground at the right foot".
std::string name_of_force(const mechanics::BodyCase& body_case, const mechanics::BodyForce& force);

} // namespace steelyard::words
