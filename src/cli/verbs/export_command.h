#pragma once
// `steelyard export`: questions for a course site, a spreadsheet or flash cards.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb export_verb();

} // namespace steelyard::cli
