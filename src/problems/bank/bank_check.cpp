#include "problems/bank/bank_check.h"

#include "problems/bank/answer_kinds.h"
#include "problems/language/number_text.h"
#include "problems/question/question_writer.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace steelyard::problems {

namespace {

/// Draws per accepted instance beyond which a family is not worth waiting for.
constexpr std::size_t kMostDrawsEach = 400;
/// A share of refusals above which the ranges should be narrowed [-].
constexpr double kManyRefusals = 0.95;
/// A share of equal instances above which a family has too little to offer [-].
constexpr double kManyDuplicates = 0.5;
/// A step's formula and the solver's number may differ by rounding only.
constexpr double kSolverAgreement = 1.0e-9;

std::string no_value(const std::string& what) {
    return what + " has no finite value in some of the draws: see what it divides by";
}

/// A condition without a value would count as one that does not hold.
void check_conditions(const Instance& instance, std::set<std::string>& faults) {
    const Family& family = *instance.family;
    const auto has_value = [&](const Expression& condition) {
        return std::isfinite(condition.evaluate(instance.quantities.data()));
    };
    for (const WrongPlan& plan : family.wrong)
        if (plan.when && !has_value(*plan.when))
            faults.insert(no_value(fmt::format("\"when\" of the rule \"{}\"", plan.rule)));
    for (const DifficultyLever& lever : family.difficulty)
        if (!has_value(lever.when))
            faults.insert(no_value("\"when\" of a [[harder]]"));
}

/// Rules for whose sake draws are thrown away, since they give no number there.
void check_wrong(const Instance& instance, std::set<std::string>& faults) {
    const double* const quantities = instance.quantities.data();
    for (const WrongPlan& plan : instance.family->wrong)
        if ((!plan.when || plan.when->holds(quantities)) &&
            !std::isfinite(plan.gives.evaluate(quantities)))
            faults.insert(no_value(fmt::format("the rule \"{}\"", plan.rule)));
}

void check_steps(const Instance& instance, std::set<std::string>& faults) {
    const Family& family = *instance.family;
    for (const StepPlan& step : family.steps) {
        const double by = step.by.evaluate(instance.quantities.data());
        const double solver = instance.quantities[step.find];
        if (!std::isfinite(by)) {
            faults.insert(
                no_value(fmt::format("the step for \"{}\"", family.quantities[step.find].name)));
            continue;
        }
        if (std::abs(by - solver) <= kSolverAgreement * std::max(std::abs(by), std::abs(solver)))
            continue;
        const std::string where =
            fmt::format("the step for \"{}\" gives ", family.quantities[step.find].name);
        // One example says enough.
        const auto known = faults.lower_bound(where);
        if (known == faults.end() || known->compare(0, where.size(), where) != 0)
            faults.insert(fmt::format("{}{}, the solver {} ({})", where, number_text(by, 6),
                                      number_text(solver, 6), code_of(instance)));
    }
}

/// A rule that parts nowhere cannot say where the thinking went wrong.
void check_parting(const Bank& bank, const Family& family, std::set<std::string>& faults) {
    for (const WrongPlan& plan : family.wrong) {
        const WrongRule* const rule = bank.find_wrong_rule(plan.rule);
        std::vector<std::string> finds = rule ? rule->parts_at : std::vector<std::string>{};
        if (!plan.parts_at.empty())
            finds = {plan.parts_at};
        const bool known =
            std::any_of(family.steps.begin(), family.steps.end(), [&](const StepPlan& step) {
                return std::count(finds.begin(), finds.end(), family.quantities[step.find].name) >
                       0;
            });
        if (!known)
            faults.insert(fmt::format("the rule \"{}\" parts at no step: say which with parts_at",
                                      plan.rule));
    }
}

std::string most_frequent(const FamilyCheck& check) {
    const auto most = std::max_element(check.refused.begin(), check.refused.end());
    return describe(static_cast<Refusal>(std::distance(check.refused.begin(), most)));
}

} // namespace

FamilyCheck check_family(const Bank& bank, const Family& family, std::size_t instances) {
    FamilyCheck check;
    check.family = family.id;
    check.file = family.file;
    check.written = !family.items.empty();
    if (check.written) {
        check.accepted = check.draws = family.items.size();
        for (const Item& item : family.items)
            ++check.by_difficulty.at(static_cast<std::size_t>(item.difficulty));
        return check;
    }
    Random random(mix(family.number, 0));
    Instance instance;
    instance.family = &family;
    std::set<std::vector<double>> seen;
    std::set<std::string> faults;
    check_parting(bank, family, faults);
    while (check.accepted < instances && check.draws < instances * kMostDrawsEach &&
           (check.accepted > 0 || check.draws < kMostDrawsEach)) {
        ++check.draws;
        const Refusal refusal = try_draw(family, random, instance);
        if (refusal != Refusal::none) {
            ++check.refused[static_cast<std::size_t>(refusal)];
            if (refusal == Refusal::no_value && row_of(family.kind).has_steps)
                check_wrong(instance, faults);
            continue;
        }
        ++check.accepted;
        ++check.by_difficulty.at(static_cast<std::size_t>(instance.difficulty));
        check_steps(instance, faults);
        check_conditions(instance, faults);
        // Another name in the same story is no other question: its number does not count.
        std::vector<double> key = instance.quantities;
        key.push_back(static_cast<double>(instance.change));
        check.duplicates += seen.insert(std::move(key)).second ? 0 : 1;
    }
    if (check.refused[static_cast<std::size_t>(Refusal::disagrees)] > 0)
        faults.insert("a stated or computed number is not the one that the solver finds for it");
    if (check.accepted == 0)
        faults.insert(fmt::format("no valid instance in {} draws; most were {}", check.draws,
                                  most_frequent(check)));
    const auto refused = static_cast<double>(check.draws - check.accepted);
    if (check.accepted > 0 && refused > kManyRefusals * static_cast<double>(check.draws))
        check.warnings.push_back(fmt::format("{:.1f} % of the draws are refused, most for {}",
                                             100.0 * refused / static_cast<double>(check.draws),
                                             most_frequent(check)));
    if (static_cast<double>(check.duplicates) >
        kManyDuplicates * static_cast<double>(check.accepted))
        check.warnings.push_back(fmt::format("only {} of {} instances are different",
                                             check.different(), check.accepted));
    check.faults.assign(faults.begin(), faults.end());
    return check;
}

} // namespace steelyard::problems
