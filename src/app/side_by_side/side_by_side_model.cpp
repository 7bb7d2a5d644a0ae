#include "app/side_by_side/side_by_side_model.h"

#include "words/whatif/comparison.h"
#include "words/whatif/gym_moves.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Change;
using mechanics::Hinge;

constexpr std::size_t kSweepSteps = 61;

mechanics::BodyCase posed_at(const mechanics::Exercise& exercise, double progress) {
    mechanics::BodyCase posed = exercise.body_case;
    if (exercise.path)
        posed.pose = mechanics::pose_at(posed.pose, *exercise.path, progress);
    return posed;
}

void refuse(SideBySideModel& model, const mechanics::MechanicsError& error) {
    model.message = "That cannot be: " + error.key + " should be " + error.expected + ".";
}

void ask_for_ways(SideBySideModel& model) {
    if (model.aim.kind == AimKind::equal &&
        words::are_equal(model.peak_a_Nm(), model.peak_b_Nm())) {
        model.search.stop();
        return;
    }
    const mechanics::Exercise& exercise = model.state.b.exercise;
    model.search.ask(exercise, goal_of(model), words::gym_changes(exercise, model.joint()));
    if (const auto change = selected_change(model))
        model.search.ask_spans(*change);
}

/// Solves a state into the model, or leaves the model as it was.
tl::expected<void, mechanics::MechanicsError> show(SideBySideModel& model, ComparedState state) {
    const std::vector<Hinge> axes = words::axes_of_both(state.a, state.b);
    auto a = solve_compared(state.a.exercise, axes, model.progress);
    if (!a)
        return tl::unexpected(a.error());
    auto b = solve_compared(state.b.exercise, axes, model.progress);
    if (!b)
        return tl::unexpected(b.error());
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < axes.size() && !model.axes.empty(); ++i)
        if (axes[i] == model.joint()) // goes on being looked at
            chosen = i;
    model.state = std::move(state);
    model.axes = axes;
    model.a = std::move(*a);
    model.b = std::move(*b);
    model.chosen = chosen;
    ask_for_ways(model);
    return {};
}

void put(SideBySideModel& model, ComparedState state, int gesture) {
    const ComparedState before = model.state;
    if (auto shown = show(model, std::move(state)); !shown)
        return refuse(model, shown.error());
    model.message.clear();
    model.history.before_change(before, gesture);
}

void restore(SideBySideModel& model, ComparedState state) {
    model.message.clear();
    [[maybe_unused]] const auto shown = show(model, std::move(state)); // was solvable before
    assert(shown);
}

void apply(SideBySideModel& model, const ScrubBoth& intent) {
    const double progress = std::clamp(intent.progress, 0.0, 1.0);
    const auto scrub = [&](const mechanics::Exercise& exercise, ComparedBody& body) {
        mechanics::BodyCase posed = posed_at(exercise, progress);
        auto here = mechanics::solve_body(posed);
        if (!here)
            return refuse(model, here.error());
        body.posed = std::move(posed);
        body.here = std::move(*here);
    };
    model.progress = progress;
    scrub(model.state.a.exercise, model.a);
    scrub(model.state.b.exercise, model.b);
}

void apply(SideBySideModel& model, const ChooseJoint& intent) {
    if (intent.index >= model.axes.size())
        return;
    model.chosen = intent.index;
    ask_for_ways(model);
}

void apply(SideBySideModel& model, const PutSide& intent) {
    ComparedState state = model.state;
    (intent.side == Side::a ? state.a : state.b) = intent.setup;
    state.limits.clear(); // they were taken from another exercise
    model.selected.reset();
    put(model, std::move(state), 0);
}

void apply(SideBySideModel& model, const SwapSides& /*intent*/) {
    ComparedState state = model.state;
    std::swap(state.a, state.b);
    put(model, std::move(state), 0);
}

void apply(SideBySideModel& model, const CopyToB& /*intent*/) {
    ComparedState state = model.state;
    state.b = state.a;
    put(model, std::move(state), 0);
}

void apply(SideBySideModel& model, const AimAt& intent) {
    model.aim = intent.aim;
    ask_for_ways(model);
}

void apply(SideBySideModel& model, const SelectChange& intent) {
    model.selected = intent.change;
    if (const auto change = selected_change(model))
        model.search.ask_spans(*change);
}

void apply(SideBySideModel& model, const ChangeB& intent) {
    auto changed = mechanics::with_change(model.state.b.exercise, intent.change, intent.value);
    if (!changed)
        return refuse(model, changed.error());
    ComparedState state = model.state;
    state.b.exercise = std::move(*changed);
    put(model, std::move(state), intent.gesture);
}

void apply(SideBySideModel& model, const ToggleLimit& intent) {
    ComparedState state = model.state;
    const auto found =
        std::find_if(state.limits.begin(), state.limits.end(),
                     [&](const mechanics::Cap& limit) { return limit.hinge == intent.hinge; });
    if (found != state.limits.end()) {
        state.limits.erase(found);
        return put(model, std::move(state), 0);
    }
    const auto axis = std::find(model.axes.begin(), model.axes.end(), intent.hinge);
    if (axis == model.axes.end())
        return;
    const auto index = static_cast<std::size_t>(axis - model.axes.begin());
    state.limits.push_back({intent.hinge, std::abs(model.b.peaks[index].torque_Nm)});
    put(model, std::move(state), 0);
}

void apply(SideBySideModel& model, const UndoCompared& /*intent*/) {
    if (model.history.can_undo())
        restore(model, model.history.undo(model.state));
}

void apply(SideBySideModel& model, const RedoCompared& /*intent*/) {
    if (model.history.can_redo())
        restore(model, model.history.redo(model.state));
}

} // namespace

tl::expected<ComparedBody, mechanics::MechanicsError>
solve_compared(const mechanics::Exercise& exercise, const std::vector<Hinge>& axes,
               double progress) {
    ComparedBody body;
    body.posed = posed_at(exercise, progress);
    auto here = mechanics::solve_body(body.posed);
    if (!here)
        return tl::unexpected(here.error());
    body.here = std::move(*here);
    auto reading = mechanics::read_repetition(exercise, axes);
    if (!reading)
        return tl::unexpected(reading.error());
    body.peaks = std::move(reading->peaks);
    if (!exercise.path)
        return body;
    if (auto swept =
            mechanics::sweep_into(exercise.body_case, *exercise.path, kSweepSteps, body.sweep);
        !swept)
        return tl::unexpected(swept.error());
    return body;
}

SideBySideModel make_side_by_side(const setup::BodySetup& a, const setup::BodySetup& b) {
    SideBySideModel model;
    restore(model, {a, b, {}});
    return model;
}

mechanics::Goal goal_of(const SideBySideModel& model) {
    mechanics::Goal goal;
    goal.wanted.hinge = model.joint();
    switch (model.aim.kind) {
    case AimKind::equal:
        goal.wanted.torque_Nm = model.peak_a_Nm();
        break;
    case AimKind::easier:
        goal.wanted.torque_Nm = (1.0 - kAimStep) * model.peak_b_Nm();
        break;
    case AimKind::harder:
        goal.wanted.torque_Nm = (1.0 + kAimStep) * model.peak_b_Nm();
        break;
    case AimKind::typed:
        goal.wanted.torque_Nm = model.aim.typed_Nm;
        break;
    }
    for (const mechanics::Cap& limit : model.state.limits)
        if (limit.hinge != goal.wanted.hinge) // the aim itself says what this joint is to carry
            goal.wanted.caps.push_back(limit);
    return goal;
}

std::optional<Change> selected_change(const SideBySideModel& model) {
    if (!model.selected)
        return std::nullopt;
    const std::vector<Change> all =
        mechanics::possible_changes(model.state.b.exercise, model.joint());
    return std::find(all.begin(), all.end(), *model.selected) != all.end() ? model.selected
                                                                           : std::nullopt;
}

std::optional<mechanics::Way> way_to_aim(const SideBySideModel& model) {
    if (!model.search.is_complete())
        return std::nullopt;
    const std::vector<mechanics::Way>& ways = model.search.found().ways;
    for (const mechanics::Way& way : ways)
        if (way.change == model.selected)
            return way;
    return ways.empty() ? std::nullopt : std::optional(ways.front());
}

std::optional<mechanics::Cap> limit_at(const SideBySideModel& model, Hinge hinge) {
    for (const mechanics::Cap& limit : model.state.limits)
        if (limit.hinge == hinge)
            return limit;
    return std::nullopt;
}

void update(SideBySideModel& model, const SideBySideIntent& intent) {
    std::visit([&](const auto& one) { apply(model, one); }, intent);
}

} // namespace steelyard::app
