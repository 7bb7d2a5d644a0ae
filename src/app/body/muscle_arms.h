#pragma once
// Moment arms of the muscles at the chosen axis, which a person may give in place of those on file.

#include "app/body/body_model.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// A muscle that is shown at the chosen axis.
struct MuscleArm {
    std::string muscle;
    double size_m = 0.0; ///< of its moment arm in the present pose [m], >= 0
    bool given = false;  ///< by the person, not from a file
};

/// Those of which an arm is known here, in the order in which they are shown.
std::vector<MuscleArm> muscle_arms(const BodyModel& model);

/// The person with an arm of one of them given, the same at every angle; it turns the joint the way
/// it does now.
/// @param size_m  [m], from 0 (the muscle then does not turn the joint) to kLongestMuscleArm_m
setup::ExerciseEdit with_arm(const BodyModel& model, const MuscleArm& arm, double size_m);

/// The person without any arm given at the chosen axis.
setup::ExerciseEdit with_arms_on_file(const BodyModel& model);

} // namespace steelyard::app
