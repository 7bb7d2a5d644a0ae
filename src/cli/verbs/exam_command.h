#pragma once
// `steelyard exam`: the mock exam in a terminal.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb exam_verb();

} // namespace steelyard::cli
