#include "app/body/body_model.h"

#include "mechanics/whatif/pull.h"
#include "setup/body/finish_movement.h"
#include "setup/body/touching.h"
#include "setup/build/joint_lever.h"
#include "words/body/body_reading.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::app {

namespace {

using Solved = tl::expected<void, mechanics::MechanicsError>;

/// The exercise at a place of its path, at rest there: a pose that is held shows its statics.
Solved solve_here(BodyModel& model) {
    const mechanics::Exercise& exercise = model.exercise();
    model.posed = exercise.body_case;
    if (exercise.path)
        model.posed.pose =
            mechanics::pose_at(exercise.body_case.pose, *exercise.path, model.progress);
    auto solved = mechanics::solve_body(model.posed);
    if (!solved)
        return tl::unexpected(solved.error());
    model.solved = std::move(*solved);
    model.at_axis.reset();
    auto muscles = mechanics::solve_muscles_at(model.posed, model.solved, model.axis(),
                                               model.shown.muscles, model.shown.rule);
    if (!muscles)
        return tl::unexpected(muscles.error());
    model.at_axis = std::move(*muscles);
    return {};
}

void show_muscles_of_axis(BodyModel& model) {
    model.shown.muscles = words::shown_muscles(model.state.setup, model.muscles, model.axis());
    model.shown.rule = mechanics::usual_sharing(model.shown.muscles);
}

Solved solve_all(BodyModel& model) {
    ++model.version;
    if (auto here = solve_here(model); !here)
        return here;
    return curves_into(model.state.setup, model.state.chosen, model.shown, model.curves);
}

void refuse(BodyModel& model, const mechanics::MechanicsError& error) {
    // What sticks tells a whole story; its key would only say where it stands in a file.
    const bool sticks = error.key.find("stick") != std::string::npos;
    model.message =
        sticks ? fmt::format("That cannot be: it needs {}.", error.expected)
               : fmt::format("That cannot be: {} should be {}.", error.key, error.expected);
}

/// "The sole of the left foot 12 cm above the floor. Bend the left knee by 8° less ..."
void refuse(BodyModel& model, const setup::InputError& error) {
    std::string found = error.found;
    if (!found.empty() && found.front() >= 'a' && found.front() <= 'z')
        found.front() = static_cast<char>(found.front() - 'a' + 'A');
    model.message = found.empty() ? fmt::format("That cannot be: expected {}.", error.expected)
                                  : fmt::format("{}; expected {}.", found, error.expected);
    if (!error.mend.empty())
        model.message += " " + error.mend;
}

/// A state that could be solved before, or is known to be.
void restore(BodyModel& model, BodyState state) {
    model.state = std::move(state);
    show_muscles_of_axis(model);
    [[maybe_unused]] const auto solved = solve_all(model);
    assert(solved);
}

void put(BodyModel& model, BodyState next, int gesture) {
    BodyState before = std::exchange(model.state, std::move(next));
    show_muscles_of_axis(model);
    if (auto solved = solve_all(model); !solved) {
        restore(model, std::move(before));
        refuse(model, solved.error());
        return;
    }
    model.message.clear();
    model.history.before_change(before, gesture);
}

void put(BodyModel& model, mechanics::Exercise exercise, int gesture) {
    BodyState state = model.state;
    state.setup.exercise = std::move(exercise);
    put(model, std::move(state), gesture);
}

void go_to(BodyModel& model, double progress) {
    const double before = model.progress;
    model.progress = std::clamp(progress, 0.0, 1.0);
    if (auto solved = solve_here(model); !solved) {
        model.progress = before;
        refuse(model, solved.error());
    }
}

void apply(BodyModel& model, const Scrub& intent) {
    model.posing = mechanics::PoseEnds::both; // what is seen is no longer the end that was posed
    go_to(model, intent.progress);
}

void apply(BodyModel& model, const ChooseAxis& intent) {
    if (intent.index >= model.state.setup.axes.size() || intent.index == model.state.chosen)
        return;
    BodyState state = model.state;
    state.chosen = intent.index;
    restore(model, std::move(state));
}

/// True where one end of a path is posed by itself.
bool poses_apart(const BodyModel& model) {
    return model.moves() && model.posing != mechanics::PoseEnds::both;
}

/// Puts an exercise whose pose was changed by hand: what should touch has to touch still. A pull at
/// both ends alike has kept in place what sticks; the way to an end posed apart is bent anew.
void put_posed(BodyModel& model, mechanics::Exercise exercise, int gesture) {
    BodyState state = model.state;
    state.setup.exercise = std::move(exercise);
    const auto error = poses_apart(model) ? setup::finish_movement(state.setup)
                                          : setup::untouched_contact(state.setup);
    if (error)
        refuse(model, *error);
    else
        put(model, std::move(state), gesture);
}

void apply(BodyModel& model, const SetBodyNumber& intent) {
    if (intent.number.field != BodyField::angle || !poses_apart(model)) {
        put(model, with_value(model.standing(), intent.number, intent.value_SI), intent.gesture);
        return;
    }
    const mechanics::Exercise held = mechanics::held_at(model.exercise(), model.posing);
    put_posed(model,
              mechanics::with_end_of(model.exercise(), model.posing,
                                     with_value({held, 0.0}, intent.number, intent.value_SI)),
              intent.gesture);
}

void apply(BodyModel& model, const PullPoint& intent) {
    const mechanics::Exercise held = mechanics::held_at(model.exercise(), model.posing);
    auto exercise =
        mechanics::pulled(held, {intent.point, intent.to_m, intent.sight, model.progress});
    if (!exercise)
        refuse(model, exercise.error());
    else if (poses_apart(model))
        put_posed(model, mechanics::with_end_of(model.exercise(), model.posing, *exercise),
                  intent.gesture);
    else
        put_posed(model, std::move(*exercise), intent.gesture);
}

/// The hinge that was the chosen axis is so again where it is still compared.
std::size_t axis_again(const std::vector<mechanics::Hinge>& axes, mechanics::Hinge chosen) {
    const auto found = std::find(axes.begin(), axes.end(), chosen);
    return found == axes.end() ? 0 : static_cast<std::size_t>(found - axes.begin());
}

void apply(BodyModel& model, const EditExercise& intent) {
    auto changed = setup::edited(model.state.setup, intent.edit, model.tables);
    if (!changed) {
        refuse(model, changed.error());
        return;
    }
    const std::size_t chosen = axis_again(changed->axes, model.axis());
    put(model, BodyState{std::move(*changed), chosen}, intent.gesture);
}

void apply(BodyModel& model, const PoseApart& intent) {
    model.posing = model.moves() ? intent.posing : mechanics::PoseEnds::both;
    if (model.posing != mechanics::PoseEnds::both)
        go_to(model, model.posing == mechanics::PoseEnds::start ? 0.0 : 1.0);
}

void apply(BodyModel& model, const MoveFixture& intent) {
    put(model, with_fixture(model.exercise(), intent.resistance, intent.to_m), intent.gesture);
}

void apply(BodyModel& model, const OpenExercise& intent) {
    model.progress = 0.0;
    model.posing = mechanics::PoseEnds::both;
    put(model, BodyState{intent.setup, 0}, 0);
    model.history.forget();
    go_to_hardest(model);
}

void apply(BodyModel& model, const NameExercise& intent) {
    BodyState state = model.state;
    state.setup.head.name = intent.name;
    put(model, std::move(state), 0);
}

/// An earlier or later exercise, seen from the axis that is looked at now.
void go_back_to(BodyModel& model, BodyState state) {
    state.chosen = axis_again(state.setup.axes, model.axis());
    model.message.clear();
    restore(model, std::move(state));
}

void apply(BodyModel& model, const UndoBody& /*intent*/) {
    if (model.history.can_undo())
        go_back_to(model, model.history.undo(model.state));
}

void apply(BodyModel& model, const RedoBody& /*intent*/) {
    if (model.history.can_redo())
        go_back_to(model, model.history.redo(model.state));
}

} // namespace

BodyModel make_body(const setup::BodySetup& setup, std::vector<mechanics::Muscle> muscles,
                    std::vector<setup::NamedSegmentTable> tables) {
    BodyModel model;
    model.muscles = std::move(muscles);
    model.tables = std::move(tables);
    restore(model, {setup, 0});
    go_to_hardest(model);
    return model;
}

void update(BodyModel& model, const BodyIntent& intent) {
    std::visit([&](const auto& one) { apply(model, one); }, intent);
}

void go_to_hardest(BodyModel& model) {
    if (const auto place = words::hardest_place(model.state.setup); place && model.moves())
        apply(model, Scrub{*place});
}

tl::expected<setup::LeverSetup, std::string> lever_of_axis(const BodyModel& model) {
    const mechanics::Pull* mover = nullptr;
    double most_N = 0.0;
    if (model.at_axis)
        for (std::size_t i = 0; i < model.at_axis->solution.muscles.size(); ++i)
            if (const double tension_N = model.at_axis->solution.muscles[i].tension_N;
                tension_N > most_N) {
                most_N = tension_N;
                mover = &model.at_axis->pulls[i];
            }
    return setup::lever_of_joint(model.state.setup, model.posed, model.solved, model.axis(), mover);
}

std::optional<double> muscle_force(const BodyModel& model) {
    if (!model.at_axis || model.at_axis->solution.outcome != mechanics::MuscleOutcome::balanced)
        return std::nullopt;
    double sum_N = 0.0;
    for (const mechanics::MuscleReading& muscle : model.at_axis->solution.muscles)
        sum_N += muscle.tension_N;
    return sum_N;
}

} // namespace steelyard::app
