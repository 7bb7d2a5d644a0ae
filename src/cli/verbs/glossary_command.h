#pragma once
// `steelyard glossary`: what a term means, and all of them on paper with a formula sheet.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb glossary_verb();

} // namespace steelyard::cli
