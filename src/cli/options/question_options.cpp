#include "cli/options/question_options.h"

#include "cli/options/checked_options.h"
#include "setup/files/data_folder.h"

#include <CLI/CLI.hpp>
#include <ostream>

namespace steelyard::cli {

void add_bank_option(CLI::App& command, QuestionOptions& options) {
    command.add_option("--bank", options.bank, "folder of the question bank, if not our own")
        ->type_name("DIR");
}

void add_units_option(CLI::App& command, QuestionOptions& options) {
    only_words(
        command.add_option("--units", options.units, "questions in kg, N, m or in lb, lbf, in, ft"),
        {"si", "us"});
}

std::optional<setup::UnitSystem> units_of(const QuestionOptions& options) {
    if (options.units.empty())
        return std::nullopt;
    return options.units == "us" ? setup::UnitSystem::us : setup::UnitSystem::si;
}

void add_scene_options(CLI::App& command, QuestionOptions& options) {
    only_words(command.add_option_function<std::string>(
                   "--about",
                   [&options](const std::string& word) {
                       options.about = word == "people"   ? problems::Scene::person
                                       : word == "things" ? problems::Scene::thing
                                                          : problems::Scene::words;
                   },
                   "questions that show a person or a limb, a lever on the bench, or words alone"),
               {"people", "things", "words"});
    command.add_flag("--own", options.own,
                     "your own question families too, from the question_bank of your data folder");
}

void add_choice_options(CLI::App& command, QuestionOptions& options) {
    command.add_option("--skill", options.skill, "only this skill (`steelyard list skills`)")
        ->type_name("SKILL");
    command.add_option("--family", options.family, "only this family (`steelyard list families`)")
        ->type_name("FAMILY");
    command.add_option("--difficulty", options.difficulty, "only this, from 1 (easy) to 5 (hard)")
        ->check(CLI::Range(1, 5))
        ->type_name("N");
    add_scene_options(command, options);
    add_units_option(command, options);
    add_seed_option(command, options.seed, "the same seed gives the same questions");
    add_bank_option(command, options);
}

problems::Bank open_bank(const QuestionOptions& options, const Streams& streams) {
    const std::filesystem::path folder = options.bank.empty()
                                             ? setup::data_folder() / "question_bank"
                                             : std::filesystem::path(options.bank);
    problems::Bank bank = problems::load_bank(folder);
    if (options.bank.empty())
        add_own_families(bank, problems::own_bank_folder());
    for (const setup::InputError& fault : bank.faults)
        streams.err << to_text(fault) << '\n';
    for (const setup::InputError& fault : bank.own_faults)
        streams.err << "One of your own questions is left out. " << to_text(fault) << '\n';
    return bank;
}

std::optional<problems::Bank> open_whole_bank(const QuestionOptions& options,
                                              const Streams& streams) {
    problems::Bank bank = open_bank(options, streams);
    if (bank.faults.empty())
        return bank;
    streams.err
        << "Nothing is made from a part of the questions: the same seed would give others.\n";
    return std::nullopt;
}

problems::PaperPlan plan_from(const QuestionOptions& options, std::size_t count) {
    problems::PaperPlan plan;
    plan.count = count;
    plan.seed = options.seed.value_or(1);
    plan.difficulty = options.difficulty;
    if (!options.skill.empty())
        plan.skill = options.skill;
    if (!options.family.empty())
        plan.family = options.family;
    plan.units = units_of(options);
    plan.about = options.about;
    plan.with_own = options.own;
    return plan;
}

} // namespace steelyard::cli
