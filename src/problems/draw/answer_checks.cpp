#include "problems/draw/answer_checks.h"

#include "problems/bank/answer_kinds.h"
#include "problems/bank/shown_units.h"
#include "problems/draw/place_spots.h"
#include "problems/draw/setup_solution.h"

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

/// Set-ups to be ranked lie at least this far apart, relative to the larger: nobody should have to
/// compute to three figures to rank by sight.
constexpr double kRankGap = 0.05;
/// A change that is to be called up or down is at least this large [-].
constexpr double kLeastChange = 0.03;

bool always_together(const Family& family, const std::string& one, const std::string& other) {
    return std::any_of(family.same_number.begin(), family.same_number.end(), [&](const auto& pair) {
        return (pair.first == one && pair.second == other) ||
               (pair.first == other && pair.second == one);
    });
}

/// Whether a rule gives a number of another kind, which depends on the units computed in. In SI
/// the units that are shown and those computed with agree.
bool mixes_quantities(const WrongPlan& plan, const Family& family) {
    return family.is_us_edition &&
           !is_homogeneous(plan.gives, family, family.quantities[family.ask.find].dimension);
}

Refusal compute_wrong(const Family& family, Instance& instance) {
    instance.wrong.assign(family.wrong.size(), std::nan(""));
    for (std::size_t i = 0; i < family.wrong.size(); ++i) {
        const WrongPlan& plan = family.wrong[i];
        if (plan.when && !plan.when->holds(instance.quantities.data()))
            continue;
        const double value =
            mixes_quantities(plan, family)
                ? value_in_shown_units(plan.gives, family, instance.quantities.data())
                : plan.gives.evaluate(instance.quantities.data());
        if (!std::isfinite(value))
            return Refusal::no_value;
        if (std::abs(value - instance.answer) <= 2.0 * instance.tolerance)
            return Refusal::answer_collides;
        for (std::size_t j = 0; j < i; ++j)
            if (std::abs(value - instance.wrong[j]) <=
                    kRuleTolerance * (std::abs(value) + std::abs(instance.wrong[j])) &&
                !always_together(family, plan.rule, family.wrong[j].rule))
                return Refusal::rules_collide;
        instance.wrong[i] = value;
    }
    return Refusal::none;
}

Refusal finish_numeric(const Family& family, Instance& instance) {
    instance.answer = instance.quantities[family.ask.find];
    instance.tolerance = std::max(family.ask.relative_tolerance * std::abs(instance.answer),
                                  family.ask.absolute_tolerance_si);
    if (instance.tolerance <= 0.0)
        return Refusal::no_value;
    return compute_wrong(family, instance);
}

Refusal finish_choices(const Family& family, Random& random, Instance& instance) {
    instance.shown = in_order(family.choices.size());
    if (!family.keeps_choice_order)
        shuffle(random, instance.shown);
    instance.correct.clear();
    std::vector<double> changed;
    for (std::size_t at = 0; at < instance.shown.size(); ++at) {
        const ChoicePlan& choice = family.choices[instance.shown[at]];
        const double* quantities = instance.quantities.data();
        if (!choice.sets.empty()) {
            const Refusal refusal = solve_changed(family, choice.sets, instance, changed);
            if (refusal != Refusal::none)
                return refusal;
            quantities = changed.data();
        }
        const double right = choice.when->evaluate(quantities);
        if (!std::isfinite(right))
            return Refusal::no_value;
        if (right != 0.0)
            instance.correct.push_back(at);
    }
    const bool clear = row_of(family.kind).picks == Picks::one ? instance.correct.size() == 1
                                                               : !instance.correct.empty();
    return clear ? Refusal::none : Refusal::choices_unclear;
}

Refusal finish_ordering(const Family& family, Random& random, Instance& instance) {
    instance.shown = in_order(family.choices.size());
    shuffle(random, instance.shown);
    instance.values.assign(family.choices.size(), 0.0);
    std::vector<double> changed;
    for (std::size_t i = 0; i < family.choices.size(); ++i) {
        const Refusal refusal = solve_changed(family, family.choices[i].sets, instance, changed);
        if (refusal != Refusal::none)
            return refusal;
        instance.values[i] = changed[family.ask.find];
    }
    if (!all_finite(instance.values))
        return Refusal::no_value;
    instance.correct = in_order(instance.shown.size());
    const auto value_at = [&](std::size_t at) { return instance.values[instance.shown[at]]; };
    std::sort(instance.correct.begin(), instance.correct.end(), [&](std::size_t a, std::size_t b) {
        return family.ask.ascending ? value_at(a) < value_at(b) : value_at(a) > value_at(b);
    });
    for (std::size_t i = 1; i < instance.correct.size(); ++i) {
        const double one = value_at(instance.correct[i - 1]);
        const double next = value_at(instance.correct[i]);
        if (std::abs(one - next) <= kRankGap * std::max(std::abs(one), std::abs(next)))
            return Refusal::choices_unclear;
    }
    return Refusal::none;
}

Refusal finish_change(const Family& family, Instance& instance) {
    std::vector<double> changed;
    const Refusal refusal =
        solve_changed(family, family.changes[instance.change].sets, instance, changed);
    if (refusal != Refusal::none)
        return refusal;
    instance.answer = instance.quantities[family.ask.find];
    instance.changed = changed[family.ask.find];
    if (!std::isfinite(instance.changed))
        return Refusal::no_value;
    const double rise = instance.changed - instance.answer;
    const double size = std::max(std::abs(instance.answer), std::abs(instance.changed));
    instance.shown = in_order(3);
    if (std::abs(rise) <= kAgreement * size)
        instance.correct = {2};
    else if (std::abs(rise) < kLeastChange * size)
        return Refusal::choices_unclear;
    else
        instance.correct = {rise > 0.0 ? std::size_t{0} : std::size_t{1}};
    return Refusal::none;
}

} // namespace

Refusal finish(const Family& family, Random& random, Instance& instance) {
    switch (family.kind) {
    case Kind::numeric:
        return finish_numeric(family, instance);
    case Kind::single_choice:
    case Kind::several_choices:
        return finish_choices(family, random, instance);
    case Kind::ordering:
        return finish_ordering(family, random, instance);
    case Kind::change:
        return finish_change(family, instance);
    case Kind::place:
        return find_spots(family, random, instance);
    }
    return Refusal::no_value;
}

Refusal check_given(const Family& family, const Instance& instance) {
    for (const QuantityIndex index : family.given) {
        const Quantity& quantity = family.quantities[index];
        if (quantity.decimals < 0 && !quantity.shows_exactly(instance.quantities[index]))
            return Refusal::not_clean;
        if (row_of(family.kind).has_steps && index != family.ask.find &&
            quantity.dimension == family.quantities[family.ask.find].dimension &&
            std::abs(instance.quantities[index] - instance.answer) <= instance.tolerance)
            return Refusal::answer_is_given;
    }
    return Refusal::none;
}

} // namespace steelyard::problems
