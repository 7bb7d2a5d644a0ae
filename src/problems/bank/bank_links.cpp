#include "problems/bank/bank_links.h"

#include "setup/toml/spelling.h"

#include <fmt/core.h>

#include <set>

namespace steelyard::problems {

namespace {

template <typename Each>
std::string did_you_mean(std::string_view id, const std::vector<Each>& all) {
    std::vector<std::string_view> ids;
    for (const Each& each : all)
        ids.push_back(each.id);
    const std::string nearest = setup::nearest_spelling(id, ids);
    return nearest.empty() ? std::string() : fmt::format("Did you mean \"{}\"?", nearest);
}

std::set<std::string> rules_of(const Family& family) {
    std::set<std::string> rules;
    for (const WrongPlan& plan : family.wrong)
        rules.insert(plan.rule);
    for (const ChoicePlan& choice : family.choices)
        rules.insert(choice.rule);
    for (const ChangePlan& change : family.changes)
        rules.insert({change.rule_up, change.rule_down, change.rule_same});
    if (family.place)
        for (const SpotPlan& spot : family.place->spots)
            rules.insert(spot.rule);
    for (const Item& item : family.items)
        for (const Choice& choice : item.choices)
            rules.insert(choice.wrong_rule);
    rules.erase("");
    return rules;
}

} // namespace

std::vector<setup::InputError> faults_of_links(const Bank& bank, const Family& family) {
    std::vector<setup::InputError> faults;
    const auto add = [&](std::string key, std::string found, std::string expected,
                         std::string mend) {
        setup::InputError fault;
        fault.file = family.file;
        fault.key = std::move(key);
        fault.found = std::move(found);
        fault.expected = std::move(expected);
        fault.mend = std::move(mend);
        faults.push_back(std::move(fault));
    };
    if (!bank.find_skill(family.skill))
        add("skill", fmt::format("\"{}\"", family.skill), "the id of a skill in skills.toml",
            did_you_mean(family.skill, bank.skills));
    for (const std::string& rule : rules_of(family))
        if (!bank.find_wrong_rule(rule))
            add("wrong", fmt::format("the rule \"{}\"", rule),
                "the id of a rule in wrong_rules.toml", did_you_mean(rule, bank.wrong_rules));
    if (const Family* const other = bank.find_family_by_number(family.number))
        add("id", fmt::format("\"{}\"", family.id),
            fmt::format("an id that neither equals nor shares its number in question codes with "
                        "\"{}\" of {}",
                        other->id, other->file),
            "Choose another id.");
    return faults;
}

} // namespace steelyard::problems
