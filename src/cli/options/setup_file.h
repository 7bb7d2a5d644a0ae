#pragma once
// Reading the setup that a verb was given.

#include "cli/verbs/verb.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/setup.h"

#include <optional>
#include <string>

namespace steelyard::cli {

/// The setup in a file, or of one that comes with the program by its name alone
/// ("launch-trolley"); nothing after its error was told on streams.err.
std::optional<setup::Setup> setup_from(const std::string& file, const Streams& streams);

/// A lever solved, or nothing after its error was told on streams.err.
std::optional<mechanics::LeverResult> solved(const setup::LeverSetup& lever,
                                             const Streams& streams);

} // namespace steelyard::cli
