#include "app/side_by_side/lever_pair_model.h"

#include "words/whatif/comparison.h"

#include <cassert>
#include <cmath>

namespace steelyard::app {

namespace {

tl::expected<void, mechanics::MechanicsError> show(LeverPairModel& model, LeverPairState state) {
    auto a = mechanics::solve_lever(state.a.lever);
    if (!a)
        return tl::unexpected(a.error());
    auto b = mechanics::solve_lever(state.b.lever);
    if (!b)
        return tl::unexpected(b.error());
    model.state = std::move(state);
    model.a = std::move(*a);
    model.b = std::move(*b);
    model.ways = {};
    if (model.a.effort_N && !model.efforts_are_equal())
        model.ways = mechanics::ways_to_effort(model.state.b.lever, effort_size_N(model.a));
    return {};
}

void put(LeverPairModel& model, LeverPairState state, int gesture) {
    const LeverPairState before = model.state;
    if (auto shown = show(model, std::move(state)); !shown) {
        model.message =
            "That cannot be: " + shown.error().key + " should be " + shown.error().expected + ".";
        return;
    }
    model.message.clear();
    model.history.before_change(before, gesture);
}

void restore(LeverPairModel& model, LeverPairState state) {
    model.message.clear();
    [[maybe_unused]] const auto shown = show(model, std::move(state)); // was solvable before
    assert(shown);
}

void apply(LeverPairModel& model, const PutLever& intent) {
    LeverPairState state = model.state;
    (intent.side == Side::a ? state.a : state.b) = intent.setup;
    model.selected.reset();
    put(model, std::move(state), 0);
}

void apply(LeverPairModel& model, const SwapLevers& /*intent*/) {
    put(model, {model.state.b, model.state.a}, 0);
}

void apply(LeverPairModel& model, const CopyLeverToB& /*intent*/) {
    put(model, {model.state.a, model.state.a}, 0);
}

void apply(LeverPairModel& model, const SelectLeverChange& intent) {
    model.selected = intent.change;
}

void apply(LeverPairModel& model, const ChangeLeverB& intent) {
    LeverPairState state = model.state;
    state.b.lever = mechanics::with_change(state.b.lever, intent.change, intent.value);
    put(model, std::move(state), intent.gesture);
}

void apply(LeverPairModel& model, const UndoLevers& /*intent*/) {
    if (model.history.can_undo())
        restore(model, model.history.undo(model.state));
}

void apply(LeverPairModel& model, const RedoLevers& /*intent*/) {
    if (model.history.can_redo())
        restore(model, model.history.redo(model.state));
}

} // namespace

bool LeverPairModel::efforts_are_equal() const {
    return words::are_equal(effort_size_N(a), effort_size_N(b));
}

double effort_size_N(const mechanics::LeverResult& solved) {
    return std::abs(solved.effort_N.value_or(0.0));
}

LeverPairModel make_lever_pair(const setup::LeverSetup& a, const setup::LeverSetup& b) {
    LeverPairModel model;
    restore(model, {a, b});
    return model;
}

std::optional<mechanics::LeverChange> selected_change(const LeverPairModel& model) {
    if (!model.selected)
        return std::nullopt;
    const std::vector<mechanics::LeverChange> all =
        mechanics::possible_changes(model.state.b.lever);
    return std::find(all.begin(), all.end(), *model.selected) != all.end() ? model.selected
                                                                           : std::nullopt;
}

void update(LeverPairModel& model, const LeverPairIntent& intent) {
    std::visit([&](const auto& one) { apply(model, one); }, intent);
}

} // namespace steelyard::app
