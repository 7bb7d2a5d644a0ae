#pragma once
// A solved lever for a terminal and for another program.

#include "cli/reports/json_text.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/lever/lever_setup.h"

#include <string>

namespace steelyard::cli {

/// The result with the keys that `steelyard solve --json` promises. What does not exist is null;
/// every number is finite and in SI, torques counter-clockwise positive. What a joint of the body
/// has too is called as it is there: see body_json.
Json lever_json(const setup::LeverSetup& setup, const mechanics::LeverResult& result);

/// The result to read: class and why, every reading with its unit, what a learner should be told,
/// and how each number was computed.
std::string lever_report(const setup::LeverSetup& setup, const mechanics::LeverResult& result);

} // namespace steelyard::cli
