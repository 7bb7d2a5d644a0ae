#include "problems/instance.h"

#include "problems/lever_plan.h"
#include "problems/place_spots.h"
#include "problems/question_code.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace steelyard::problems {

namespace {

/// A stated number and the solver's may differ by rounding only.
constexpr double kAgreement = 1.0e-9;
/// Set-ups to be ranked lie at least this far apart, relative to the larger: nobody should have to
/// compute to three figures to rank by sight.
constexpr double kRankGap = 0.05;
/// A change that is to be called up or down is at least this large [-].
constexpr double kLeastChange = 0.03;

double tenth_power(int decimals) {
    static constexpr std::array<double, 10> kPowers{1.0, 1e1, 1e2, 1e3, 1e4,
                                                    1e5, 1e6, 1e7, 1e8, 1e9};
    return kPowers[static_cast<std::size_t>(decimals)];
}

void draw_quantities(const Family& family, Random& random, Instance& instance) {
    for (const Draw& draw : family.draws) {
        std::int64_t whole = 0;
        if (draw.list.empty())
            whole = draw.first + draw.step * static_cast<std::int64_t>(draw_below(
                                                 random, static_cast<std::uint64_t>(draw.count)));
        else
            whole = draw.list[draw_below(random, draw.list.size())];
        // One division: the double nearest to the decimal that is shown.
        const double shown = static_cast<double>(whole) / tenth_power(draw.decimals);
        instance.quantities[draw.quantity] = family.quantities[draw.quantity].in_SI(shown);
    }
    if (family.gravity)
        instance.quantities[*family.gravity] = family.gravity_m_s2;
    if (!family.scenes.empty())
        instance.scene = draw_below(random, family.scenes.size());
    if (family.scene_number)
        instance.quantities[*family.scene_number] = static_cast<double>(instance.scene + 1);
    if (!family.changes.empty())
        instance.change = draw_below(random, family.changes.size());
}

void compute(const std::vector<Let>& lets, double* quantities) {
    for (const Let& let : lets)
        quantities[let.quantity] = let.is.evaluate(quantities);
}

bool all_hold(const std::vector<Constraint>& constraints, const double* quantities) {
    return std::all_of(constraints.begin(), constraints.end(), [&](const Constraint& constraint) {
        return constraint.holds.holds(quantities);
    });
}

/// Solves the setup for the quantities known so far and computes the rest.
Refusal solve(const Family& family, double* quantities, mechanics::Lever* lever,
              std::optional<mechanics::LeverResult>& solved) {
    if (family.lever) {
        build_lever(*family.lever, quantities, family.gravity_m_s2, *lever);
        tl::expected<mechanics::LeverResult, mechanics::MechanicsError> result =
            mechanics::solve_lever(*lever);
        if (!result)
            return Refusal::not_solvable;
        solved = std::move(*result);
        if (family.lever->has_effort && solved->status != mechanics::LeverStatus::ok &&
            solved->status != mechanics::LeverStatus::coincident_points)
            return Refusal::wrong_status;
        for (const Family::FromSolution& from : family.from_solution) {
            const double value = value_of(from.provided, *solved);
            double& quantity = quantities[from.quantity];
            if (!std::isfinite(value))
                return from.provided.quantity == LeverQuantity::lever_class ? Refusal::no_class
                                                                            : Refusal::no_value;
            if (!from.checks)
                quantity = value;
            else if (std::abs(value - quantity) >
                     kAgreement * std::max(1.0, std::max(std::abs(value), std::abs(quantity))))
                return Refusal::disagrees;
        }
    }
    compute(family.after, quantities);
    return Refusal::none;
}

/// The setup with some quantities changed.
Refusal solve_changed(const Family& family, const Changes& sets, const Instance& instance,
                      std::vector<double>& quantities) {
    quantities = instance.quantities;
    for (const Let& set : sets)
        quantities[set.quantity] = set.is.evaluate(instance.quantities.data());
    for (const Let& let : family.before)
        if (!let.fixed)
            quantities[let.quantity] = let.is.evaluate(quantities.data());
    std::optional<mechanics::Lever> lever = instance.lever;
    std::optional<mechanics::LeverResult> solved;
    return solve(family, quantities.data(), lever ? &*lever : nullptr, solved);
}

bool all_finite(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

/// Every stated number that was computed has to be a short decimal.
Refusal check_given(const Family& family, const Instance& instance) {
    for (const QuantityIndex index : family.given) {
        const Quantity& quantity = family.quantities[index];
        if (quantity.decimals < 0 && !quantity.shows_exactly(instance.quantities[index]))
            return Refusal::not_clean;
        if (family.kind == Kind::numeric && index != family.ask.find &&
            quantity.dimension == family.quantities[family.ask.find].dimension &&
            std::abs(instance.quantities[index] - instance.answer) <= instance.tolerance)
            return Refusal::answer_is_given;
    }
    return Refusal::none;
}

bool always_together(const Family& family, const std::string& one, const std::string& other) {
    return std::any_of(family.same_number.begin(), family.same_number.end(), [&](const auto& pair) {
        return (pair.first == one && pair.second == other) ||
               (pair.first == other && pair.second == one);
    });
}

Refusal compute_wrong(const Family& family, Instance& instance) {
    instance.wrong.assign(family.wrong.size(), std::nan(""));
    for (std::size_t i = 0; i < family.wrong.size(); ++i) {
        const WrongPlan& plan = family.wrong[i];
        if (plan.when && !plan.when->holds(instance.quantities.data()))
            continue;
        const double value = plan.gives.evaluate(instance.quantities.data());
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

void shuffle(Random& random, std::vector<std::size_t>& order) {
    for (std::size_t i = order.size(); i > 1; --i)
        std::swap(order[i - 1], order[draw_below(random, i)]);
}

std::vector<std::size_t> in_order(std::size_t count) {
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    return order;
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
    const bool clear = family.kind == Kind::single_choice ? instance.correct.size() == 1
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
        return find_spots(family, instance);
    }
    return Refusal::no_value;
}

/// A written family: the seed's upper part says which item, so that a code keeps its item when
/// others are added; its lower part shuffles.
void draw_item(const Family& family, std::uint64_t seed, Instance& instance) {
    const std::uint64_t wanted = seed / kItemShuffles;
    instance.item = 0;
    std::uint64_t nearest = kItemNumbers;
    for (std::size_t i = 0; i < family.items.size(); ++i) {
        // The next number round the circle, so that every seed finds an item.
        const std::uint64_t ahead = (family.items[i].number + kItemNumbers - wanted) % kItemNumbers;
        if (ahead < nearest) {
            nearest = ahead;
            instance.item = i;
        }
    }
    const Item& item = family.items[instance.item];
    instance.seed = item.number * kItemShuffles + seed % kItemShuffles;
    Random random(mix(instance.seed, family.number));
    instance.shown = in_order(item.choices.size());
    if (!item.keeps_order)
        shuffle(random, instance.shown);
    instance.correct.clear();
    for (std::size_t at = 0; at < instance.shown.size(); ++at)
        if (std::find(item.correct.begin(), item.correct.end(), instance.shown[at]) !=
            item.correct.end())
            instance.correct.push_back(at);
    instance.difficulty = item.difficulty;
}

} // namespace

Refusal try_draw(const Family& family, Random& random, Instance& instance) {
    instance.quantities.assign(family.quantities.size(), 0.0);
    draw_quantities(family, random, instance);
    compute(family.before, instance.quantities.data());
    // Most draws that fail do so here, before the dearer part.
    if (!all_hold(family.early_constraints, instance.quantities.data()))
        return Refusal::constraint;
    if (family.lever && !instance.lever)
        instance.lever.emplace();
    const Refusal refusal = solve(family, instance.quantities.data(),
                                  instance.lever ? &*instance.lever : nullptr, instance.solved);
    if (refusal != Refusal::none)
        return refusal;
    if (!all_finite(instance.quantities))
        return Refusal::no_value;
    if (!all_hold(family.constraints, instance.quantities.data()))
        return Refusal::constraint;
    const Refusal unfinished = finish(family, random, instance);
    if (unfinished != Refusal::none)
        return unfinished;
    instance.difficulty = family.base_difficulty;
    for (const DifficultyLever& lever : family.difficulty)
        if (lever.when.holds(instance.quantities.data()))
            instance.difficulty += lever.adds;
    instance.difficulty = std::clamp(instance.difficulty, 1, 5);
    return check_given(family, instance);
}

Refusal draw_instance(const Family& family, std::uint64_t seed, Instance& instance) {
    instance.family = &family;
    instance.seed = seed % kSeeds;
    if (!family.items.empty()) {
        draw_item(family, instance.seed, instance);
        return Refusal::none;
    }
    Random random(mix(instance.seed, family.number));
    Refusal refusal = Refusal::none;
    for (int i = 0; i < kMaxDraws; ++i) {
        refusal = try_draw(family, random, instance);
        if (refusal == Refusal::none || refusal == Refusal::disagrees)
            return refusal;
    }
    return refusal;
}

} // namespace steelyard::problems
