#pragma once
// `steelyard ask`: practice in the terminal.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb ask_verb();

} // namespace steelyard::cli
