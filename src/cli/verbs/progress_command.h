#pragma once
// `steelyard progress`: where a learner stands.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb progress_verb();

} // namespace steelyard::cli
