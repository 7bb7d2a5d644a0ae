#pragma once
// Practice in a terminal: ask, hint, mark, explain.

#include "cli/verb.h"
#include "problems/bank.h"
#include "problems/generator.h"

namespace steelyard::cli {

/// Asks the questions of a plan one after the other until they are through or the learner quits.
/// Reads lines from streams.in, writes to streams.out.
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
