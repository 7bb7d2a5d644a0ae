#pragma once
// `steelyard bank`: what is in the question bank, and is it sound.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb bank_verb();

} // namespace steelyard::cli
