#pragma once
// The conversation about a question in a terminal: a view of learner/study/asking.h.

#include "cli/verbs/verb.h"
#include "learner/study/asking.h"
#include "problems/question/generator.h"

#include <cstddef>
#include <functional>
#include <iosfwd>

namespace steelyard::cli {

enum class Ended { finished, skipped, quit };

/// Keeps what was answered. @return false when it cannot be kept: the conversation ends
using Keep = std::function<bool()>;

/// Leads through one question until it is finished, skipped or the learner quits. Calls `keep`
/// after each answer, before anything is said to it.
Ended converse(const problems::Bank& bank, learner::Asking& asking, const Streams& streams,
               const Keep& keep);

/// The prompt, its drawing and its choices.
void show_question(const problems::Question& question, std::ostream& out);

/// All steps and the answer.
void show_solution(const problems::Question& question, std::ostream& out);

/// Asks the questions of a plan one after the other until they are through or the learner quits.
/// Reads lines from streams.in, writes to streams.out; keeps nothing.
/// @param done_steps  of each worked solution so many steps are shown at once; the learner does
///                    the rest (a faded example)
ExitStatus practise(const problems::Bank& bank, const problems::PaperPlan& plan,
                    std::size_t done_steps, const Streams& streams);

/// The same for one question.
ExitStatus practise_one(const problems::Bank& bank, const problems::Question& question,
                        std::size_t done_steps, const Streams& streams);

/// One question with its worked answer, for where nobody can type.
void show_worked(const problems::Question& question, const Streams& streams);

} // namespace steelyard::cli
