#pragma once
// The clock on the wall. Only the command line and the window read it; all that the learner's
// part computes is told what time it is.

#include "learner/time/clock.h"

namespace steelyard::learner {

Clock wall_clock();

} // namespace steelyard::learner
