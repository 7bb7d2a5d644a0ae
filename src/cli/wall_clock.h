#pragma once
// The clock on the wall: the one place of the command line that reads it.

#include "learner/clock.h"

namespace steelyard::cli {

learner::Clock wall_clock();

} // namespace steelyard::cli
