// Simulated learners, each of whom always thinks by one wrong rule: the marking has to find out
// which.

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/language/number_text.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"

#include <algorithm>
#include <map>
#include <set>

using namespace steelyard::problems;

namespace {

struct Tally {
    int answers = 0;
    int attributed = 0;       ///< to the rule that was followed, alone or with others
    int to_another_alone = 0; ///< to another rule only
};

/// What such a learner types: three figures and the unit, as everyone is taught.
std::string typed(const WrongAnswer& wrong, const std::string& unit) {
    return with_unit(number_text(wrong.value, 3), unit);
}

bool names(const Marking& marking, const std::string& rule) {
    return std::count(marking.wrong_rules.begin(), marking.wrong_rules.end(), rule) > 0;
}

} // namespace

TEST_CASE("a learner who follows one wrong rule is found out") {
    const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    std::map<std::string, Tally> by_rule;
    constexpr std::uint64_t kSeedsEach = 40;
    for (const Family& family : bank.families) {
        if (family.kind != Kind::numeric)
            continue;
        for (std::uint64_t seed = 0; seed < kSeedsEach; ++seed) {
            const auto question = question_of_family(bank, family, seed);
            REQUIRE(question.has_value());
            for (const WrongAnswer& wrong : question->wrong_rules) {
                const Marking marking =
                    mark(bank, *question, typed(wrong, wanted_number(*question)->unit));
                Tally& tally = by_rule[wrong.rule];
                ++tally.answers;
                tally.attributed += names(marking, wrong.rule) ? 1 : 0;
                tally.to_another_alone += marking.wrong_rule && !names(marking, wrong.rule) ? 1 : 0;
            }
        }
    }
    CHECK(by_rule.size() >= 20);
    for (const auto& [rule, tally] : by_rule) {
        INFO(rule << ": " << tally.attributed << " of " << tally.answers);
        CHECK(tally.attributed >= 0.98 * tally.answers);
        CHECK(tally.to_another_alone <= 0.01 * tally.answers);
    }
}

TEST_CASE("every wrong rule of the bank is used and every one has something to say") {
    const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    std::set<std::string> used;
    for (const Family& family : bank.families) {
        for (const WrongPlan& plan : family.wrong)
            used.insert(plan.rule);
        for (const ChoicePlan& choice : family.choices)
            used.insert(choice.rule);
        for (const ChangePlan& change : family.changes)
            used.insert({change.rule_up, change.rule_down, change.rule_same});
        if (family.place)
            for (const SpotPlan& spot : family.place->spots)
                used.insert(spot.rule);
        for (const Item& item : family.items)
            for (const Choice& choice : item.choices)
                used.insert(choice.wrong_rule);
    }
    // These are tried on any number, by their factor.
    used.insert({"thousand-slip", "decimal-slip", "sign", "gravity-as-ten"});
    for (const WrongRule& rule : bank.wrong_rules) {
        INFO(rule.id);
        CHECK(used.count(rule.id) == 1);
        CHECK(rule.feedback.size() > 30);
        CHECK(rule.ask.back() == '?');
    }
}
