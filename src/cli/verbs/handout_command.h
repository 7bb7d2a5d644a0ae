#pragma once
// `steelyard handout`: worksheets with keys, in versions.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb handout_verb();

} // namespace steelyard::cli
