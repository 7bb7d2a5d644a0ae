#pragma once
// The command line: the same work as the window, without a window.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

/// Runs one command to its end.
/// @param argc, argv  as main receives them, the program's name first
/// @return 0, or 2 for a command line or a file that cannot be used, or 1 for anything else.
///         Errors are told on streams.err, each with what to do about it.
int run_command_line(int argc, const char* const* argv, const Streams& streams);

} // namespace steelyard::cli
