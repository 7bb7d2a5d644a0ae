#pragma once
// steelyard calendar: what to do on which day until the exam.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb calendar_verb();

} // namespace steelyard::cli
