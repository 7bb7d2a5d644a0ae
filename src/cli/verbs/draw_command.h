#pragma once
// `steelyard draw` and `steelyard figure`: a setup as a picture, as on the stage or with a caption
// for a page.

#include "cli/verbs/verb.h"

namespace steelyard::cli {

Verb draw_verb();
Verb figure_verb();

} // namespace steelyard::cli
