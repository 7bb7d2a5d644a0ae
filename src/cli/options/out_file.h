#pragma once
// What --out names is not written over unasked.

#include "cli/verbs/verb.h"

#include <string>

namespace steelyard::cli {

/// Declares --force.
void add_force_option(CLI::App& command, bool& force);

/// Whether --out may be written: nothing is there yet, or a device or pipe, or an empty folder, or
/// --force was given. Where it may not, that is told.
bool may_write(const std::string& out, bool force, const Streams& streams);

} // namespace steelyard::cli
