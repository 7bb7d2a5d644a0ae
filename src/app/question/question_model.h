#pragma once
// A question that is being answered: what was typed, chosen or placed so far, how much of its
// solution stands there, how it was marked. No window, no drawing.

#include "mechanics/lever/lever_solve.h"
#include "problems/bank.h"
#include "problems/marking.h"
#include "problems/placing.h"
#include "problems/question.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// What a question allows while it is answered.
struct AskRules {
    std::size_t done_steps = 0; ///< of the worked solution so many stand there from the beginning
    bool by_steps = false;      ///< the learner is asked for the other steps one by one
    bool help = true;           ///< hints, steps of one's own, mending a unit
    bool feedback = true;       ///< false in an exam: answers are taken, not marked
};

/// An answer as it was given.
struct Attempt {
    std::string typed; ///< as `problems::mark` reads it; empty when given up
    problems::Marking marking;
    bool gave_up = false;
    int hints = 0;
    double help = 0.0; ///< share of the solution that stood there, 0 to 1
};

struct QuestionModel {
    problems::Question question;
    AskRules rules;
    std::string typed;                      ///< number, or letter of a place, so far
    std::vector<std::size_t> chosen;        ///< choices in the order in which they were chosen
    std::optional<problems::Placed> placed; ///< on the drawing
    std::optional<problems::Marking> mark;  ///< of the last answer
    std::vector<Attempt> attempts;          ///< all that were marked
    std::size_t open_steps = 0;             ///< of the worked solution, shown whole
    bool next_told = false;                 ///< of the next one it is told what to do
    int hints = 0;                          ///< asked for
    std::size_t helped_halves = 0;          ///< halves of steps that were told or asked one by one
    std::string step_typed;                 ///< the learner's own next step, so far
    std::optional<problems::Marking> step_mark;
    bool finished = false; ///< answered, or given up: everything is shown
};

QuestionModel begin_question(problems::Question question, const AskRules& rules);

/// Starts on a question that is like a lever: of a family whose lever has the same class, where
/// the bank has one, else any. The same seed gives the same question.
/// @return the question, or a sentence saying why there is none
tl::expected<QuestionModel, std::string> ask_like(const problems::Bank& bank,
                                                  std::optional<mechanics::LeverClass> lever_class,
                                                  std::uint64_t seed);

/// Whether it has a drawing.
bool is_drawn(const problems::Question& question);
/// Whether it is answered by putting something on its drawing.
bool is_placed(const problems::Question& question);
/// Whether it is answered in a line of text.
bool is_typed(const problems::Question& question);

/// Chooses or un-chooses a choice: single questions keep one, the others a row.
void choose(QuestionModel& model, std::size_t choice);

/// Puts something on the drawing; a letter that was typed is forgotten.
void place(QuestionModel& model, const problems::Placed& placed);
/// Moves an end of what is placed by keys; of a point on the lever, the point along it.
/// @param along_m    to the right and up, in the setup's frame
/// @param beginning  the first end of a line or an arm instead of the last
void nudge(QuestionModel& model, const mechanics::Vec2& along_m, bool beginning);
/// A step of such a nudge: a hundredth of the lever's length, and no more than the tolerance, so
/// that no right place lies between two steps [m].
double nudge_step_m(const problems::Question& question);

/// The answer so far as `problems::mark` reads it; empty when there is none.
std::string answer_of(const QuestionModel& model);
/// Takes such an answer up again.
void take_answer(QuestionModel& model, const std::string& answer);

/// Marks the answer so far. A right one finishes the question, and so does a wrong one, whose
/// feedback gives the answer; what could not be read may be mended, and with help a slip of unit.
void mark_answer(const problems::Bank& bank, QuestionModel& model);

/// Of the next step first what to do, then how it comes out.
void give_hint(QuestionModel& model);
bool has_hint(const QuestionModel& model);

/// Marks the learner's own next step; a right one stands there from now on.
void mark_own_step(QuestionModel& model);
/// Whether the next step is one to do by oneself: the answer line asks for the last one. It is
/// asked for once steps stand there, or where the rules want it from the beginning.
bool has_own_step(const QuestionModel& model);

/// Shows the worked answer to somebody who does not know.
void give_up(QuestionModel& model);

} // namespace steelyard::app
