#pragma once
// `steelyard reference`: the manual page, and what completes words in a shell.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb reference_verb();

} // namespace steelyard::cli
