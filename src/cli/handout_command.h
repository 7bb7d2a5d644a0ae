#pragma once
// `steelyard handout`: worksheets with keys, in versions.

#include "cli/verb.h"

namespace steelyard::cli {

Verb handout_verb();

} // namespace steelyard::cli
