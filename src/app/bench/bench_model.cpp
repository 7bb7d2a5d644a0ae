#include "app/bench/bench_model.h"

#include <algorithm>
#include <cassert>
#include <initializer_list>

namespace steelyard::app {

namespace {

/// Puts a state on the bench if it can be solved.
void put(BenchModel& model, BenchState state, int gesture) {
    auto solved = mechanics::solve_lever(state.setup.lever);
    if (!solved) {
        model.message =
            "That cannot be: " + solved.error().key + " should be " + solved.error().expected + ".";
        return;
    }
    model.message.clear();
    model.history.before_change(model.state, gesture);
    model.state = std::move(state);
    model.solved = std::move(*solved);
}

/// Goes to an earlier or later state, which has been solvable before.
void restore(BenchModel& model, BenchState state) {
    model.message.clear();
    model.state = std::move(state);
    auto solved = mechanics::solve_lever(model.state.setup.lever);
    assert(solved);
    model.solved = std::move(*solved);
}

BenchState with_handled(BenchState state, const HandledLever& handled) {
    state.setup.lever = handled.lever;
    state.hand_N = handled.hand_N;
    return state;
}

/// Puts the lever with other numbers on the bench; a number that stays what it is is no step.
void put_numbers(BenchModel& model, const HandledLever& handled,
                 std::initializer_list<LeverNumber> numbers, int gesture) {
    const HandledLever present = model.state.handled();
    const bool same = std::all_of(numbers.begin(), numbers.end(), [&](const LeverNumber& number) {
        return value_of(handled, number) == value_of(present, number);
    });
    if (same)
        model.message.clear();
    else
        put(model, with_handled(model.state, handled), gesture);
}

void apply(BenchModel& model, const SetNumber& intent) {
    put_numbers(model, with_value(model.state.handled(), intent.number, intent.value_SI),
                {intent.number}, intent.gesture);
}

void apply(BenchModel& model, const SetPull& intent) {
    const LeverNumber direction{intent.part, LeverField::direction};
    const LeverNumber force{intent.part, LeverField::force};
    const HandledLever turned = with_value(model.state.handled(), direction, intent.direction_rad);
    put_numbers(model, with_value(turned, force, intent.size_N), {direction, force},
                intent.gesture);
}

void apply(BenchModel& model, const AddLoad& intent) {
    BenchState state = model.state;
    state.setup.lever.loads.push_back({"load " + std::to_string(state.setup.lever.loads.size() + 1),
                                       mechanics::Weight{intent.at_m, intent.mass_kg}});
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const RemoveLoad& intent) {
    BenchState state = model.state;
    auto& loads = state.setup.lever.loads;
    if (intent.index >= loads.size()) {
        model.message = "There is no such load: choose one that is on the lever.";
        return;
    }
    loads.erase(loads.begin() + static_cast<std::ptrdiff_t>(intent.index));
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const TakeByHand& /*intent*/) {
    if (model.state.hand_N)
        return;
    BenchState state = model.state;
    state.hand_N = model.solved.effort_N.value_or(0.0);
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const SolveForEffort& /*intent*/) {
    if (!model.state.hand_N)
        return;
    BenchState state = model.state;
    state.hand_N.reset();
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const OpenSetup& intent) {
    put(model, {intent.setup, std::nullopt}, 0);
    model.history.forget();
}

void apply(BenchModel& model, const NameSetup& intent) {
    BenchState state = model.state;
    state.setup.head.name = intent.name;
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const SwitchUnits& /*intent*/) {
    model.units =
        model.units == setup::UnitSystem::si ? setup::UnitSystem::us : setup::UnitSystem::si;
}

void apply(BenchModel& model, const Undo& /*intent*/) {
    if (model.history.can_undo())
        restore(model, model.history.undo(model.state));
}

void apply(BenchModel& model, const Redo& /*intent*/) {
    if (model.history.can_redo())
        restore(model, model.history.redo(model.state));
}

} // namespace

BenchModel make_bench(const setup::LeverSetup& setup, std::optional<double> hand_N) {
    BenchModel model;
    restore(model, {setup, hand_N});
    return model;
}

void update(BenchModel& model, const BenchIntent& intent) {
    std::visit([&](const auto& one) { apply(model, one); }, intent);
}

} // namespace steelyard::app
