#include "cli/verbs/bank_command.h"

#include "cli/options/question_options.h"
#include "problems/bank/bank_check.h"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct BankOptions {
    std::string what;
    std::string folder;
    std::size_t instances = 1000;
};

std::string refusals_of(const problems::FamilyCheck& check) {
    std::string text;
    for (std::size_t i = 1; i < check.refused.size(); ++i)
        if (check.refused[i] > 0)
            text += fmt::format("{}{} {}", text.empty() ? "" : "; ", check.refused[i],
                                problems::describe(static_cast<problems::Refusal>(i)));
    return text.empty() ? "none" : text;
}

/// The families as written, then their US editions.
std::vector<const problems::Family*> every_edition(const problems::Bank& bank) {
    std::vector<const problems::Family*> families;
    for (const auto* const list : {&bank.families, &bank.us_editions})
        for (const problems::Family& family : *list)
            families.push_back(&family);
    return families;
}

ExitStatus check(const problems::Bank& bank, std::size_t instances, const Streams& streams) {
    std::size_t unsound = 0;
    std::size_t items = 0;
    std::string thin;
    for (const problems::Family* const each : every_edition(bank)) {
        const problems::Family& family = *each;
        items += family.items.size();
        problems::FamilyCheck result = problems::check_family(bank, family, instances);
        if (family.is_us_edition)
            result.family += " (US)";
        streams.out << fmt::format(
            "{:<34} {:>5} accepted, {:>6} drawn, {:>4} different; refused: {}\n", result.family,
            result.accepted, result.draws, result.different(), refusals_of(result));
        if (result.is_thin())
            thin += fmt::format("    {:<34} {:>4}\n", result.family, result.different());
        for (const std::string& warning : result.warnings)
            streams.out << fmt::format("    to consider: {}\n", warning);
        for (const std::string& fault : result.faults)
            streams.err << fmt::format("{}: {}\n", result.file, fault);
        unsound += result.faults.empty() ? 0 : 1;
    }
    if (!thin.empty())
        streams.out << fmt::format("Families with fewer than {} different questions, and how many "
                                   "they have:\n{}",
                                   problems::kFewQuestions, thin);
    streams.out << fmt::format("{} skills, {} wrong rules, {} families ({} in US units too), {} "
                               "written items; {} faults in "
                               "files, {} families unsound.\n",
                               bank.skills.size(), bank.wrong_rules.size(), bank.families.size(),
                               bank.us_editions.size(), items, bank.faults.size(), unsound);
    return bank.faults.empty() && unsound == 0 ? ExitStatus::ok : ExitStatus::bad_input;
}

ExitStatus list(const problems::Bank& bank, const Streams& streams) {
    for (const problems::Skill& skill : bank.skills) {
        streams.out << fmt::format(
            "{}{}  ({})\n", std::string(2 * (static_cast<std::size_t>(skill.level) - 1), ' '),
            skill.title, skill.id);
        for (const problems::Family& family : bank.families)
            if (family.skill == skill.id)
                streams.out << fmt::format(
                    "{}- {}: {}\n", std::string(2 * static_cast<std::size_t>(skill.level), ' '),
                    family.id, family.title);
    }
    return ExitStatus::ok;
}

ExitStatus run(const BankOptions& options, const Streams& streams) {
    QuestionOptions questions;
    questions.bank = options.folder;
    const problems::Bank bank = open_bank(questions, streams);
    return options.what == "list" ? list(bank, streams) : check(bank, options.instances, streams);
}

Work add_bank_options(CLI::App& command) {
    auto options = std::make_shared<BankOptions>();
    command.add_option("WHAT", options->what, "check or list")
        ->required()
        ->check(CLI::IsMember({"check", "list"}));
    command.add_option("DIR", options->folder, "Folder of the bank, if not our own");
    command.add_option("--instances", options->instances, "Instances to draw of each family")
        ->check(CLI::Range(1, 1000000));
    return [options](const Streams& streams) { return run(*options, streams); };
}

} // namespace

Verb bank_verb() {
    return {"bank", "check a question bank, or list its skills and families",
            "  steelyard bank check\n"
            "  steelyard bank check my_bank --instances 5000\n"
            "  steelyard bank list",
            add_bank_options};
}

} // namespace steelyard::cli
