#pragma once

#include "cli/verbs/verb.h"

namespace steelyard::cli {

/// `steelyard whatif`: what to change about an exercise to get a wanted torque at a joint.
Verb whatif_verb();

} // namespace steelyard::cli
