#pragma once
// The clock on the wall. Only the command line and the window read it; all that the learner's
// part computes is told what time it is.

#include "learner/time/clock.h"

namespace steelyard::learner {

Clock wall_clock();

/// The place whose days are written: LC_ALL, LC_TIME or LANG, which a browser's page has from the
/// browser; empty without any.
std::string usual_locale();
/// How days are written there.
DayOrder usual_day_order();

} // namespace steelyard::learner
