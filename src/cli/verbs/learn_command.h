#pragma once
// `steelyard learn` and `steelyard quick`: practice that the record chooses.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb learn_verb();
Verb quick_verb();

} // namespace steelyard::cli
