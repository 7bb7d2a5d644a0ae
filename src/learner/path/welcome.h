#pragma once
// What is said to somebody who comes back after a pause: what was kept meanwhile, and what faded,
// by the model's forgetting (mastery.h).

#include "learner/model/standing.h"

#include <string>
#include <vector>

namespace steelyard::learner {

/// A skill before the pause and now.
struct Faded {
    std::size_t skill = 0; ///< index
    double then = 0.0;     ///< chance that it was known just after its last answer
    double now = 0.0;
};

struct WelcomeBack {
    int days = 0;                  ///< calendar days since the last answer
    std::vector<std::size_t> kept; ///< skills that were learned and still are, by index
    std::vector<Faded> faded;      ///< learned, and to be refreshed; those that lost most first
};

/// What a pause took. Learned is what was nearly or quite mastered; it counts as kept while it
/// would still be known on the exam day without a review (Parameters::keeps_until_exam).
/// Nothing within a day of the last answer: `days` is then 0.
WelcomeBack welcome_back(const Course& course, const Standing& standing, const Clock& clock);

/// "Welcome back after 6 days. You kept 5 of 8 skills. Torque faded from 96 % to 71 %, ...: these
/// come first." Empty when there was no pause, or nothing was learned before it.
std::string say(const Course& course, const WelcomeBack& back);

} // namespace steelyard::learner
