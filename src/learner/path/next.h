#pragma once
// What to ask next, by a rule that can be read:
//
//  1. A placement of at most twelve questions, for whoever has answered nothing (placement.h).
//  2. Then, of the skills begun and not mastered and of those due for review, the one that promises
//     most: its weight in the exam times the chance that it is not known. A brand-new skill is
//     asked `block` times before it is mixed with others.
//  3. When `learning_at_once` skills are not under way, and nothing is due, a new skill whose
//     prerequisites are all known well: the lowest step of the staircase first, then the heaviest.
//  4. When there is nothing of these, the weakest skill again, said to be extra.
//
// Never four drawings of one kind (a person, a thing, words alone) in a row while what is best has
// another; and people first: a skill's own families with a person come before its others.
//
// Never the same family twice running, nor two of one solving strategy while another is left
// (interleaving: Rohrer, Dedrick & Burgess 2014; Brunmair & Richter 2019).
//
// A mastered skill is due when the gap since its last answer reaches a share of the days left to
// the exam (Cepeda et al. 2008), unless it will keep until then; one that was missed, at once. A
// new skill begins with a worked example; then the solution is shown but for its last step, but for
// its last two, and not at all (fading backwards: Renkl & Atkinson 2003).

#include "learner/model/standing.h"
#include "problems/question/generator.h"

#include <cstddef>
#include <cstdint>
#include <string>

namespace steelyard::learner {

/// Why a question is asked.
enum class Reason {
    placement, ///< to find out what is known
    growing,   ///< begun and not mastered yet
    missed,    ///< the last answer was wrong
    due,       ///< mastered, and time to come back to it
    fresh,     ///< a new skill
    extra,     ///< nothing is due
    chosen,    ///< by the learner
};

/// How much of its solution stands there.
enum class Shown {
    worked_example, ///< all of it; nothing is asked
    faded,          ///< all but the last steps
    plain,          ///< nothing
};

struct Next {
    Reason reason = Reason::extra;
    std::size_t skill = 0;                    ///< index
    const problems::Family* family = nullptr; ///< null when the course can ask nothing
    Shown shown = Shown::plain;
    std::size_t blank_steps = 0; ///< of a faded one: steps left to the learner
};

/// Days until the learner's exam, counting the rest of today as one; as the parameters say when no
/// date is set or it is past.
double days_left(const Course& course, const Standing& standing, const Clock& clock);

/// Gap to the next review with so many days left [days].
double review_gap_days(const Parameters& parameters, double days_left_d);

/// When a skill falls due for review; the present when it is due or not mastered. An answer from
/// the future (the clock was set back) makes it due.
TimeMs due_at(const Course& course, const SkillState& state, double days_left_d, TimeMs now_ms);

/// What to ask next.
/// @param choice  any number; the same gives the same family
/// Cheap (some 10 µs) but in a placement, where it takes about 10 ms: call it once a question.
Next choose_next(const Course& course, const Standing& standing, const Clock& clock,
                 std::uint64_t choice);

/// A question of a skill that the learner chose, which must have one; families take turns.
Next choose_of_skill(const Course& course, const Standing& standing, const Clock& clock,
                     std::size_t skill, std::uint64_t choice);

/// The question for it, from a seed: none of those asked lately, where the family has another.
tl::expected<problems::Question, problems::NoQuestion>
question_for(const Course& course, const Standing& standing, const Next& next, std::uint64_t seed);

/// How many steps of the solution stand there.
std::size_t done_steps(const Next& next, const problems::Question& question);

/// One sentence to the learner: why this one.
std::string why(const Course& course, const Next& next);

} // namespace steelyard::learner
