#pragma once
// A question that is being answered in the window: the conversation about it, and what was typed,
// chosen or placed so far. No window, no drawing.

#include "learner/study/asking.h"
#include "mechanics/lever/lever_solve.h"
#include "problems/bank/bank.h"
#include "problems/marking/placing.h"
#include "problems/question/question.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

struct QuestionModel {
    learner::Asking asking;
    std::string typed;                      ///< number, or letter of a place, so far
    std::vector<std::size_t> chosen;        ///< choices in the order in which they were chosen
    std::optional<problems::Placed> placed; ///< on the drawing
    std::string step_typed;                 ///< the learner's own next step, so far

    const problems::Question& question() const { return asking.question; }
};

/// Starts on a question that is like a lever: of a family whose lever has the same class, where
/// the bank has one, else any. The same seed gives the same question.
/// @return the question, or a sentence saying why there is none
tl::expected<QuestionModel, std::string> ask_like(const problems::Bank& bank,
                                                  std::optional<mechanics::LeverClass> lever_class,
                                                  setup::UnitSystem units, std::uint64_t seed);

/// Whether it has a drawing.
bool is_drawn(const problems::Question& question);
/// Whether it is answered by putting something on its drawing.
bool is_placed(const problems::Question& question);
/// Whether it is answered in a line of text.
bool is_typed(const problems::Question& question);

/// Chooses or un-chooses a choice: single questions keep one, the others a row.
void choose(QuestionModel& model, std::size_t choice);
/// The same by the letter that stands before it, A to D; further letters are keys of the screen.
/// @return false when no choice has it
bool choose_by_letter(QuestionModel& model, const std::string& letter);

/// Puts something on the drawing; a letter that was typed is forgotten.
void place(QuestionModel& model, const problems::Placed& placed);
/// Chooses the place with a letter, as on paper; what was put on the drawing is forgotten.
/// @return false when no place has it
bool place_by_letter(QuestionModel& model, const std::string& letter);
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

/// Hands the answer so far to the conversation.
void enter_answer(const problems::Bank& bank, QuestionModel& model);
/// Hands over the learner's own next step; the line is empty again once the step stands there.
void enter_own_step(QuestionModel& model);

} // namespace steelyard::app
