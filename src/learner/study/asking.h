#pragma once
// One question in conversation, as a value without a face: what stands there of its solution, what
// was answered, what is said to that. The terminal and the window show the same value and hand it
// what the learner did, so that both tell the record the same.
//
//     Asking asking = begin_asking(question, rules);
//     give_hint(asking);                      // of the next step what to do, then how it comes out
//     mark_answer(bank, asking, "126 N");     // asking.told is what to show
//     while (!asking.finished) ...            // a wrong number may be tried once more
//
// What holds for both faces, and why:
// - A wrong number may be tried once more, after a hint that asks about the likely mistake and
//   keeps the answer back. To find the answer oneself after a hint is remembered better than to be
//   told it (Finn & Metcalfe 2010, Memory & Cognition 38, 951); more than one such try is guessing.
// - So may what was put on the drawing by hand, which is no more to be guessed than a number.
// - What is chosen or ordered has one try: of two or three choices a second one is half luck, and
//   the feedback on any choice has to name the right one to be of use. A place chosen by its
//   letter is such a choice.
// - A slip of the unit is a wrong number: the hint says which unit it is about.
// - What cannot be read is no attempt and costs nothing: only the writing was wrong.
// - Only the first attempt counts, as evidence and as "right at the first try" (Answer::attempt).
// - A step that the learner is asked for by itself is asked for only in typed questions, and never
//   the last one: its answer is the question's, which has its own line.
// - A wrong step is told at once and stands there from then on: to copy what was just told teaches
//   nothing.
// - "I do not know" ends the question at any try and is kept as given up.

#include "problems/bank/bank.h"
#include "problems/marking/marking.h"
#include "problems/question/question.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::learner {

/// What a question allows while it is answered.
struct AskRules {
    std::size_t done_steps = 0;  ///< of the worked solution so many stand there from the beginning
    bool by_steps = false;       ///< the learner is asked for the other steps one by one
    bool help = true;            ///< hints, steps of one's own, a second try
    bool may_skip = false;       ///< it may be left without an answer
    bool explains = true;        ///< the worked answer is shown in the end
    bool feedback = true;        ///< false in a mock exam: answers are taken, not marked
    bool explains_pounds = true; ///< pounds typed for a force are explained, not only taken
    bool calculator = true;      ///< a calculation may be typed where a number is asked
};

/// An answer as it was given.
struct Attempt {
    std::string typed; ///< as problems::mark reads it; empty when given up
    problems::Marking marking;
    bool gave_up = false;
    int hints = 0;     ///< asked for before it
    double help = 0.0; ///< share of the solution that stood there, 0 to 1
};

struct Asking {
    problems::Question question;
    AskRules rules;
    std::vector<Attempt> attempts; ///< all that were marked, and giving up
    /// What is said to the last answer. While the number may be tried again it holds the hint
    /// alone, with nothing of the right answer in it.
    std::optional<problems::Marking> told;
    std::size_t open_steps = 0;                 ///< of the worked solution, shown whole
    std::size_t own_steps = 0;                  ///< of these the learner's own, right ones
    bool next_told = false;                     ///< of the next one a hint told what to do
    int hints = 0;                              ///< asked for
    std::optional<problems::Marking> step_told; ///< what is said to the learner's last own step
    bool finished = false; ///< right, out of tries, or given up: everything may be shown
};

Asking begin_asking(problems::Question question, const AskRules& rules);

/// A question to be read, with all of its solution: a worked example, or one answered before.
Asking asked_before(problems::Question question);

/// Marks an answer, as problems::mark reads it. An empty one changes nothing.
void mark_answer(const problems::Bank& bank, Asking& asking, const std::string& answer);

/// The answer is being changed: that it could not be read no longer holds. A hint stays.
void change_answer(Asking& asking);

/// Gives the next hint: of the next step what to do or, where that stands there, how it comes out.
void give_hint(Asking& asking);
bool has_hint(const Asking& asking);

/// Whether the next step is asked for by itself. It is once steps are under way: asked for, told,
/// or wanted by the rules.
bool has_own_step(const Asking& asking);
/// Whether steps can be gone through one by one from here, and that they are from now on.
bool can_go_by_steps(const Asking& asking);
void go_by_steps(Asking& asking);
/// Marks the learner's own next step, which stands there from then on, right or told. What cannot
/// be read, or has the wrong unit, may be mended.
void mark_own_step(Asking& asking, const std::string& answer);

/// Shows the worked answer to somebody who does not know.
void give_up(Asking& asking);
bool may_give_up(const Asking& asking);
bool may_skip(const Asking& asking);

/// Halves of steps that stand there, from the first on: of each what to do, then how it comes out.
std::size_t halves_shown(const Asking& asking);

/// Share of the solution that stands there, 0 to 1; 0 where there is no worked solution. Every step
/// weighs the same, since each is one decision. Half of a step is knowing what to do, half is how
/// it comes out: a step shown whole counts one; one of which only the first half is told, and one
/// whose result the learner found, count half. How it came to stand there (rules, a hint, a step
/// asked for) does not matter: the learner had it before the answer. Our own rule, no source.
double help_of(const Asking& asking);

/// Whether the question was answered right at the first try and without a hint.
bool right_at_first(const Asking& asking);

/// What a learner may type instead of an answer: "h", "w" or "?", "n".
enum class Aside { hint, give_up, skip };
/// Nothing where the rules do not allow it: then it is an answer.
std::optional<Aside> aside_of(const Asking& asking, std::string_view typed);

} // namespace steelyard::learner
