#pragma once
// Reading the setup that a verb was given.

#include "cli/verbs/verb.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/setup.h"

#include <optional>
#include <string>
#include <string_view>

namespace steelyard::cli {

/// What help says of a setup that is named.
inline constexpr std::string_view kSetupHelp =
    "a setup file, the name of a setup that comes with the program, or - for standard input";

/// The setup in a file, or of one that comes with the program by its name alone
/// ("launch-trolley"), or for "-" on standard input; nothing after its error was told on
/// streams.err.
std::optional<setup::Setup> setup_from(const std::string& file, const Streams& streams);

/// A lever solved, or nothing after its error was told on streams.err.
std::optional<mechanics::LeverResult> solved(const setup::LeverSetup& lever,
                                             const Streams& streams);

} // namespace steelyard::cli
