#pragma once
// The skills as a staircase, prerequisites at its foot, each step filled to its mastery.

#include "learner/model/standing.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::learner {

/// A word for how well a skill is known.
enum class Mastery {
    untried, ///< never asked, and nothing speaks for it
    likely,  ///< never asked, but the placement's other answers speak for it
    shaky,   ///< below 0.4
    growing, ///< below 0.75
    nearly,  ///< below mastered
    mastered,
};

/// "not tried", "probably known", "shaky", "growing", "nearly there", "mastered"
std::string_view word_for(Mastery mastery);

struct Stair {
    std::size_t skill = 0; ///< index
    int level = 1;         ///< step of the staircase, 1 at its foot
    double known = 0.0;    ///< chance that it is known now
    Mastery mastery = Mastery::untried;
    bool open = false; ///< its prerequisites are known well enough
    bool due = false;  ///< for review
    int answers = 0;
    int right = 0;
};

/// The same with what else there is to say: "needs the steps below first", "mastered, due for
/// review".
std::string say(const Stair& stair);

/// How much of a step is filled, 0 to 1: nothing before anything is known.
double filled(const Stair& stair);

/// Every skill that can be asked, by level, within a level in the course's order. Cheap.
std::vector<Stair> staircase(const Course& course, const Standing& standing, const Clock& clock);

} // namespace steelyard::learner
