#pragma once
// `steelyard generate`: questions as JSON.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb generate_verb();

} // namespace steelyard::cli
