#pragma once
// A solved exercise of the body for a terminal and for another program.

#include "cli/reports/json_text.h"
#include "mechanics/muscle/muscle_sweep.h"
#include "words/body/body_reading.h"

#include <string>
#include <utility>
#include <vector>

namespace steelyard::cli {

/// The curves of one hinge along the path.
struct HingeCurves {
    mechanics::Hinge hinge = mechanics::Hinge::right_elbow_flexion;
    std::vector<mechanics::MuscleStep> steps;
};

/// The reading with the keys that `steelyard solve --json` promises, and the curves when there are
/// any. What does not exist is null; every number is finite and in SI, angles in rad. A joint has
/// the keys of a lever where it has the same: outcome, effort_torque_Nm (of the muscles),
/// load_torque_Nm (of all else), forces, reaction_N; both signed in the joint's positive direction.
Json body_json(const setup::BodySetup& setup, const words::BodyReading& reading,
               const std::vector<HingeCurves>& curves);

/// The reading of the hinges that could be called the axis, to read; with the curves as a table.
std::string body_report(const setup::BodySetup& setup, const words::BodyReading& reading,
                        const std::vector<HingeCurves>& curves);

} // namespace steelyard::cli
