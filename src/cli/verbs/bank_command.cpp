#include "cli/verbs/bank_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/json_options.h"
#include "cli/options/question_options.h"
#include "problems/bank/bank_check.h"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <map>
#include <memory>
#include <optional>
#include <ostream>

namespace steelyard::cli {

namespace {

struct BankOptions {
    std::string what;
    std::string folder;
    std::size_t instances = 1000;
    WantedRows rows;
};

/// What is refused and how often: "3 a moment arm too short".
std::map<std::string, std::size_t> refusals_of(const problems::FamilyCheck& check) {
    std::map<std::string, std::size_t> times;
    for (std::size_t i = 1; i < check.refused.size(); ++i)
        if (check.refused[i] > 0)
            times[std::string(problems::describe(static_cast<problems::Refusal>(i)))] +=
                check.refused[i];
    return times;
}

std::string refusals_text(const problems::FamilyCheck& check) {
    std::string text;
    for (const auto& [refusal, times] : refusals_of(check))
        text += fmt::format("{}{} {}", text.empty() ? "" : "; ", times, refusal);
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

Json check_json(const problems::FamilyCheck& check) {
    return {{"family", check.family},  {"accepted", check.accepted},
            {"draws", check.draws},    {"different", check.different()},
            {"thin", check.is_thin()}, {"refused", refusals_of(check)},
            {"faults", check.faults},  {"warnings", check.warnings}};
}

void print_check(const problems::FamilyCheck& check, const Streams& streams) {
    streams.out << fmt::format("{:<34} {:>5} accepted, {:>6} drawn, {:>4} different; refused: {}\n",
                               check.family, check.accepted, check.draws, check.different(),
                               refusals_text(check));
    for (const std::string& warning : check.warnings)
        streams.out << fmt::format("    to consider: {}\n", warning);
}

/// What a bank has, once all of it was checked.
struct Sum {
    std::size_t items = 0;
    std::size_t unsound = 0;
    std::string thin; ///< families with few different questions, a line each
};

void print_sum(const problems::Bank& bank, const Sum& sum, const Streams& streams) {
    if (!sum.thin.empty())
        streams.out << fmt::format("Families with fewer than {} different questions, and how many "
                                   "they have:\n{}",
                                   problems::kFewQuestions, sum.thin);
    streams.out << fmt::format(
        "{} skills, {} wrong rules, {} families ({} in US units too), {} written items; {} faults "
        "in files, {} families unsound.\n",
        bank.skills.size(), bank.wrong_rules.size(), bank.families.size(), bank.us_editions.size(),
        sum.items, bank.faults.size(), sum.unsound);
}

Json sum_json(const problems::Bank& bank, const Sum& sum) {
    Json faults = Json::array();
    for (const setup::InputError& fault : bank.faults)
        faults.push_back(to_text(fault));
    return {{"skills", bank.skills.size()},
            {"us_editions", bank.us_editions.size()},
            {"wrong_rules", bank.wrong_rules.size()},
            {"items", sum.items},
            {"unsound", sum.unsound},
            {"faults", std::move(faults)}};
}

ExitStatus check(const problems::Bank& bank, const BankOptions& options, const Streams& streams) {
    std::optional<JsonRows> rows;
    if (options.rows)
        rows.emplace(streams.out, "bank-check", "families", *options.rows);
    Sum sum;
    for (const problems::Family* const each : every_edition(bank)) {
        const problems::Family& family = *each;
        sum.items += family.items.size();
        problems::FamilyCheck result = problems::check_family(bank, family, options.instances);
        if (family.is_us_edition)
            result.family += " (US)";
        if (rows)
            rows->add(check_json(result));
        else
            print_check(result, streams);
        if (result.is_thin())
            sum.thin += fmt::format("    {:<34} {:>4}\n", result.family, result.different());
        for (const std::string& fault : result.faults)
            streams.err << fmt::format("{}: {}\n", result.file, fault);
        sum.unsound += result.faults.empty() ? 0 : 1;
    }
    if (rows)
        rows->finish(sum_json(bank, sum));
    else
        print_sum(bank, sum, streams);
    return bank.faults.empty() && sum.unsound == 0 ? ExitStatus::ok : ExitStatus::bad_input;
}

void print_skill(const problems::Bank& bank, const problems::Skill& skill, const Streams& streams) {
    const std::string indent(2 * (static_cast<std::size_t>(skill.level) - 1), ' ');
    streams.out << fmt::format("{}{}  ({})\n", indent, skill.title, skill.id);
    for (const problems::Family& family : bank.families)
        if (family.skill == skill.id)
            streams.out << fmt::format("{}  - {}: {}\n", indent, family.id, family.title);
}

Json skill_json(const problems::Bank& bank, const problems::Skill& skill) {
    Json families = Json::array();
    for (const problems::Family& family : bank.families)
        if (family.skill == skill.id)
            families.push_back({{"family", family.id}, {"title", family.title}});
    return {{"skill", skill.id},
            {"title", skill.title},
            {"step", skill.level},
            {"needs", skill.needs},
            {"families", std::move(families)}};
}

ExitStatus list(const problems::Bank& bank, const BankOptions& options, const Streams& streams) {
    std::optional<JsonRows> rows;
    if (options.rows)
        rows.emplace(streams.out, "bank-list", "skills", *options.rows);
    for (const problems::Skill& skill : bank.skills)
        if (rows)
            rows->add(skill_json(bank, skill));
        else
            print_skill(bank, skill, streams);
    if (rows)
        rows->finish();
    return ExitStatus::ok;
}

ExitStatus run(const BankOptions& options, const Streams& streams) {
    QuestionOptions questions;
    questions.bank = options.folder;
    const problems::Bank bank = open_bank(questions, streams);
    return options.what == "list" ? list(bank, options, streams) : check(bank, options, streams);
}

Work add_bank_options(CLI::App& command) {
    auto options = std::make_shared<BankOptions>();
    only_words(command.add_option("WHAT", options->what, "what to do"), {"check", "list"})
        ->required();
    command.add_option("DIR", options->folder, "folder of the bank, if not our own")->type_name("");
    command.add_option("--instances", options->instances, "instances to draw of each family")
        ->check(CLI::Range(1, 1000000))
        ->type_name("N");
    add_row_options(command, options->rows);
    return [options](const Streams& streams) { return run(*options, streams); };
}

} // namespace

Verb bank_verb() {
    return {"bank", "check a question bank, or list its skills and families",
            "  steelyard bank check\n"
            "  steelyard bank check my_bank --instances 5000\n"
            "  steelyard bank list --jsonl",
            add_bank_options};
}

} // namespace steelyard::cli
