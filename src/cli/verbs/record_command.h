#pragma once
// `steelyard record`: the learner's own data, out, in, gone, and looked over.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb record_verb();

} // namespace steelyard::cli
