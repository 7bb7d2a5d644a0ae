#pragma once
// `steelyard solve`: the numbers of a setup and how they were computed.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb solve_verb();

} // namespace steelyard::cli
