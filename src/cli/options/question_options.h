#pragma once
// Options that every verb about questions shares: which bank, which questions.

#include "cli/verbs/verb.h"
#include "problems/bank/bank.h"
#include "problems/question/generator.h"

#include <optional>
#include <string>

namespace steelyard::cli {

/// What was typed after a verb about questions.
struct QuestionOptions {
    std::string bank; ///< folder; empty = the one that comes with the program
    std::string skill;
    std::string family;
    std::string units; ///< "si", "us" or empty
    std::optional<int> difficulty;
    std::optional<problems::Scene> about;
    bool own = false; ///< the person's own families beside ours
    std::optional<std::uint64_t> seed;
};

/// Declares --bank.
void add_bank_option(CLI::App& command, QuestionOptions& options);

/// Declares --units.
void add_units_option(CLI::App& command, QuestionOptions& options);
/// The units that were typed; nothing when none were.
std::optional<setup::UnitSystem> units_of(const QuestionOptions& options);

/// Declares --skill, --family, --difficulty, --about, --own, --units, --seed and --bank.
void add_choice_options(CLI::App& command, QuestionOptions& options);

/// Declares --about and --own.
void add_scene_options(CLI::App& command, QuestionOptions& options);

/// Loads the bank, with the person's own families beside ours, and tells on streams.err what in it
/// cannot be used.
problems::Bank open_bank(const QuestionOptions& options, const Streams& streams);

/// The bank to draw a paper from; nothing, after telling so, when a part of it cannot be used: the
/// same seed would give another paper.
std::optional<problems::Bank> open_whole_bank(const QuestionOptions& options,
                                              const Streams& streams);

/// The plan of a paper of so many questions. The seed is 1 when none was typed.
problems::PaperPlan plan_from(const QuestionOptions& options, std::size_t count);

} // namespace steelyard::cli
