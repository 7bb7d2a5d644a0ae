#pragma once
// A question that is being answered: what was typed or chosen so far, how it was marked, which
// steps are shown. No window, no drawing.

#include "mechanics/lever/lever_solve.h"
#include "problems/bank.h"
#include "problems/marking.h"
#include "problems/question.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

struct QuestionModel {
    problems::Question question;
    std::string typed;                     ///< numeric answer so far
    std::vector<std::size_t> chosen;       ///< choices in the order in which they were chosen
    std::optional<problems::Marking> mark; ///< of the last answer
    std::size_t steps_shown = 0;           ///< of the worked steps, by hints or after the end
    bool finished = false;                 ///< answered right, or given up: everything is shown
};

/// Starts on a question that is like a lever: of a family whose lever has the same class, where
/// the bank has one, else any. The same seed gives the same question.
/// @return the question, or a sentence saying why there is none
tl::expected<QuestionModel, std::string> ask_like(const problems::Bank& bank,
                                                  std::optional<mechanics::LeverClass> lever_class,
                                                  std::uint64_t seed);

/// Chooses or un-chooses a choice: single questions keep one, the others a row.
void choose(QuestionModel& model, std::size_t choice);

/// True when there is something to mark.
bool can_be_marked(const QuestionModel& model);

/// Marks what was typed or chosen. A right answer finishes the question, and so does a wrong one,
/// whose feedback gives the answer; a slip of unit or typing may be mended.
void mark_answer(const problems::Bank& bank, QuestionModel& model);

/// Shows one more worked step; the last one finishes the question.
void show_next_step(QuestionModel& model);

} // namespace steelyard::app
