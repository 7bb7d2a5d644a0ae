#pragma once
// Practice in a terminal: ask, hint, mark, explain.

#include "cli/verb.h"
#include "problems/bank.h"
#include "problems/generator.h"
#include "problems/marking.h"

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>

namespace steelyard::cli {

/// An answer as it was given, told at once, before anything else is asked.
struct Attempt {
    int number = 1; ///< 1 for the first answer to this question
    std::string typed;
    problems::Marking marking;
    bool gave_up = false; ///< asked for the worked answer, or did not know
    std::size_t hints = 0;
    double help = 0.0; ///< share of the solution that stood there, 0 to 1
};
using OnAttempt = std::function<void(const Attempt&)>;

struct AskRules {
    std::size_t done_steps = 0; ///< of the worked solution so many steps are shown at once
    bool help = true;           ///< hints, steps, the worked answer, several attempts
    bool explain = true;        ///< without help: the worked answer for who does not know
};

enum class Ended { answered, skipped, quit };

/// Asks one question until it is answered, skipped or the learner quits. A wrong number may be
/// tried again.
/// @param on_attempt  may be empty
Ended ask_question(const problems::Bank& bank, const problems::Question& question,
                   const AskRules& rules, const Streams& streams, const OnAttempt& on_attempt);

/// The prompt, its drawing and its choices.
void show_question(const problems::Question& question, std::ostream& out);

/// All steps and the answer.
void show_solution(const problems::Question& question, std::ostream& out);

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
