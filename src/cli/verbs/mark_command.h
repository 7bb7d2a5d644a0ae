#pragma once
// `steelyard mark`: is this answer right, and if not, why.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb mark_verb();

} // namespace steelyard::cli
