#pragma once
// `steelyard learn` and `steelyard quick`: practice that the record chooses.

#include "cli/verb.h"

namespace steelyard::cli {

Verb learn_verb();
Verb quick_verb();

} // namespace steelyard::cli
