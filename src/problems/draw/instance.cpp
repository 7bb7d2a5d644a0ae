#include "problems/draw/instance.h"

#include "problems/draw/answer_checks.h"
#include "problems/draw/setup_solution.h"
#include "problems/question/question_code.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace steelyard::problems {

namespace {

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
            whole = draw.list[draw_place(random, draw.list.size())];
        // One division: the double nearest to the decimal that is shown.
        const double shown = static_cast<double>(whole) / tenth_power(draw.decimals);
        instance.quantities[draw.quantity] = family.quantities[draw.quantity].in_SI(shown);
    }
    if (family.gravity)
        instance.quantities[*family.gravity] = family.gravity_m_s2;
    if (!family.scenes.empty())
        instance.scene = draw_place(random, family.scenes.size());
    if (family.scene_number)
        instance.quantities[*family.scene_number] = static_cast<double>(instance.scene + 1);
    if (!family.changes.empty())
        instance.change = draw_place(random, family.changes.size());
}

bool all_hold(const std::vector<Constraint>& constraints, const double* quantities) {
    return std::all_of(constraints.begin(), constraints.end(), [&](const Constraint& constraint) {
        return constraint.holds.holds(quantities);
    });
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

void shuffle(Random& random, std::vector<std::size_t>& order) {
    for (std::size_t i = order.size(); i > 1; --i)
        std::swap(order[i - 1], order[draw_place(random, i)]);
}

std::vector<std::size_t> in_order(std::size_t count) {
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    return order;
}

Refusal try_draw(const Family& family, Random& random, Instance& instance) {
    instance.quantities.assign(family.quantities.size(), 0.0);
    draw_quantities(family, random, instance);
    compute(family.before, instance.quantities.data());
    // Most draws that fail do so here, before the dearer part.
    if (!all_hold(family.early_constraints, instance.quantities.data()))
        return Refusal::constraint;
    const Refusal refusal = solve(family, instance.quantities.data(), instance.setup);
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
