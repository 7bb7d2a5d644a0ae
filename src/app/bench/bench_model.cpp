#include "app/bench/bench_model.h"

#include "app/bench/lever_shape.h"
#include "mechanics/lever/lever_geometry.h"

#include <algorithm>
#include <cassert>
#include <cmath>
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
    mechanics::fill_in_found_load(*solved, state.setup.lever);
    model.state = std::move(state);
    model.solved = std::move(*solved);
}

/// Goes to an earlier or later state, which has been solvable before.
void restore(BenchModel& model, BenchState state) {
    model.message.clear();
    model.state = std::move(state);
    auto solved = mechanics::solve_lever(model.state.setup.lever);
    assert(solved);
    mechanics::fill_in_found_load(*solved, model.state.setup.lever);
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

/// Puts the lever in another shape; one that stays what it is is no step.
void put_path(BenchModel& model, std::vector<mechanics::Vec2> path_m, int gesture) {
    model.message.clear();
    if (path_m == model.state.setup.lever.path_m)
        return;
    BenchState state = model.state;
    state.setup.lever = on_path(std::move(state.setup.lever), std::move(path_m));
    put(model, std::move(state), gesture);
}

void apply(BenchModel& model, const MoveCorner& intent) {
    std::vector<mechanics::Vec2> path_m = model.state.setup.lever.path_m;
    if (intent.index >= path_m.size())
        return;
    path_m[intent.index] = intent.to_m;
    put_path(model, std::move(path_m), intent.gesture);
}

void apply(BenchModel& model, const AddCorner& /*intent*/) {
    put_path(model, with_corner(model.state.setup.lever.path_m), 0);
}

void apply(BenchModel& model, const RemoveCorner& intent) {
    if (model.state.setup.lever.path_m.size() <= 2)
        model.message = "A lever has two ends: pull one instead.";
    else
        put_path(model, without_corner(model.state.setup.lever.path_m, intent.index), 0);
}

/// The action of another kind that is as large: the same pull, or the torque that it has.
auto changed_action(const BenchModel& model, std::size_t index, LoadKind to) {
    const mechanics::Lever& lever = model.state.setup.lever;
    const mechanics::ForceReading& now = model.solved.loads[index];
    const double at_m = place_of(lever.loads[index]).value_or(free_place_m(lever));
    const double arm_m =
        std::abs(mechanics::point_at(lever.path_m, at_m).x() - model.solved.axis_m.x());
    const double pull_N = kind_of(lever.loads[index]) == LoadKind::torque
                              ? std::abs(now.torque_Nm) / std::max(arm_m, 0.01)
                              : now.force_N.norm();
    decltype(lever.loads[index].action) action = mechanics::Couple{now.torque_Nm};
    if (to == LoadKind::weight)
        action = mechanics::Weight{at_m, pull_N / std::max(lever.gravity_m_s2, 1e-3)};
    else if (to == LoadKind::pull)
        action = mechanics::PointForce{at_m, pull_N, mechanics::kDown_rad};
    return action;
}

void apply(BenchModel& model, const ChangeLoad& intent) {
    auto& loads = model.state.setup.lever.loads;
    if (intent.index >= loads.size() || kind_of(loads[intent.index]) == intent.to)
        return;
    BenchState state = model.state;
    state.setup.lever.loads[intent.index].action = changed_action(model, intent.index, intent.to);
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const NamePart& intent) {
    if (intent.name.empty()) {
        model.message = "Enter a name, such as crate or hand.";
        return;
    }
    BenchState state = model.state;
    mechanics::Lever& lever = state.setup.lever;
    if (intent.part.kind == scene::PartKind::effort)
        lever.effort.name = intent.name;
    else if (intent.part.kind == scene::PartKind::load && intent.part.index < lever.loads.size())
        lever.loads[intent.part.index].name = intent.name;
    else if (auto* beam = std::get_if<mechanics::SoughtReactions>(&lever.sought);
             beam && intent.part.kind == scene::PartKind::axis)
        beam->first_support = intent.name;
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const SetNumber& intent) {
    if (intent.number.part.kind == scene::PartKind::corner) {
        const HandledLever moved =
            with_value(model.state.handled(), intent.number, intent.value_SI);
        return put_path(model, moved.lever.path_m, intent.gesture);
    }
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
    mechanics::Sought& sought = state.setup.lever.sought;
    if (auto* known = std::get_if<mechanics::SoughtLoad>(&sought)) {
        if (known->load == intent.index)
            sought = mechanics::SoughtEffort{};
        else if (known->load > intent.index)
            --known->load;
    }
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const SeekLoad& intent) {
    BenchState state = model.state;
    mechanics::Lever& lever = state.setup.lever;
    if (mechanics::rests_on_two(lever)) {
        model.message = "A beam on two supports has no effort: stand it on one axis first.";
        return;
    }
    if (intent.index >= lever.loads.size() || mechanics::sought_load(lever) == intent.index)
        return;
    const double effort_N = model.state.hand_N.value_or(model.solved.effort_N.value_or(0.0));
    if (effort_N < 0.0)
        lever.effort.direction_rad =
            std::remainder(lever.effort.direction_rad + mechanics::kPi, 2.0 * mechanics::kPi);
    lever.sought = mechanics::SoughtLoad{intent.index, std::abs(effort_N)};
    state.hand_N.reset();
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const SpreadOwnWeight& /*intent*/) {
    if (!model.state.setup.lever.own_weight.centre_at_m)
        return;
    BenchState state = model.state;
    state.setup.lever.own_weight.centre_at_m.reset();
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const ChangeSupports& intent) {
    BenchState state = model.state;
    mechanics::Lever& lever = state.setup.lever;
    if (mechanics::rests_on_two(lever) == intent.two)
        return;
    state.hand_N.reset();
    if (intent.two) {
        lever.sought = mechanics::SoughtReactions{};
        lever.effort = {"second support", lever.effort.at_m, mechanics::kUp_rad};
        lever.friction = {};
    } else {
        lever.sought = mechanics::SoughtEffort{};
        lever.effort.name = "effort";
    }
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const TakeByHand& /*intent*/) {
    if (model.state.hand_N)
        return;
    if (!std::holds_alternative<mechanics::SoughtEffort>(model.state.setup.lever.sought)) {
        model.message = mechanics::rests_on_two(model.state.setup.lever)
                            ? "A beam on two supports has no effort to set by hand."
                            : "The effort is known already: type its pull.";
        return;
    }
    BenchState state = model.state;
    state.hand_N = model.solved.effort_N.value_or(0.0);
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const SolveForEffort& /*intent*/) {
    const bool is_known = mechanics::sought_load(model.state.setup.lever).has_value();
    if (!model.state.hand_N && !is_known)
        return;
    BenchState state = model.state;
    state.hand_N.reset();
    if (is_known)
        state.setup.lever.sought = mechanics::SoughtEffort{};
    put(model, std::move(state), 0);
}

void apply(BenchModel& model, const OpenSetup& intent) {
    put(model, {intent.setup, std::nullopt}, 0);
    model.history.forget();
}

void apply(BenchModel& model, const DrawAs& intent) {
    BenchState state = model.state;
    state.setup.limb = intent.limb;
    put(model, std::move(state), 0);
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

LoadKind kind_of(const mechanics::Load& load) {
    if (std::holds_alternative<mechanics::Weight>(load.action))
        return LoadKind::weight;
    return std::holds_alternative<mechanics::PointForce>(load.action) ? LoadKind::pull
                                                                      : LoadKind::torque;
}

BenchModel make_bench(const setup::LeverSetup& setup, std::optional<double> hand_N) {
    BenchModel model;
    restore(model, {setup, hand_N});
    return model;
}

void update(BenchModel& model, const BenchIntent& intent) {
    std::visit([&](const auto& one) { apply(model, one); }, intent);
}

} // namespace steelyard::app
