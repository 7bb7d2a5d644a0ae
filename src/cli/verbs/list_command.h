#pragma once
// `steelyard list`: what comes with the program and can be called by its name.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb list_verb();

} // namespace steelyard::cli
