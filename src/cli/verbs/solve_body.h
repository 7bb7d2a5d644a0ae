#pragma once
// `steelyard solve` for an exercise of the body.

#include "cli/verbs/verb.h"
#include "setup/body/body_setup.h"

namespace steelyard::cli {

/// What of an exercise is asked for.
struct SolveBodyOptions {
    bool json = false;
    bool sweep = false; ///< the curves along the path too
};

/// Solves every joint where the exercise is hardest for its first axis, and prints it.
ExitStatus solve_body_setup(const setup::BodySetup& setup, const SolveBodyOptions& options,
                            const Streams& streams);

} // namespace steelyard::cli
