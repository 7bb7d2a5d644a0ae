#include "app/body/body_model.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::app {

namespace {

constexpr std::size_t kSweepSteps = 61;

/// The exercise at a place of its path, at rest there: a pose that is held shows its statics.
tl::expected<void, mechanics::MechanicsError> solve_here(BodyModel& model) {
    const mechanics::Exercise& exercise = model.state.setup.exercise;
    model.posed = exercise.body_case;
    if (exercise.path)
        model.posed.pose =
            mechanics::pose_at(exercise.body_case.pose, *exercise.path, model.progress);
    auto solved = mechanics::solve_body(model.posed);
    if (!solved)
        return tl::unexpected(solved.error());
    model.solved = std::move(*solved);
    model.at_axis.reset();
    const std::vector<mechanics::Muscle> here = mechanics::muscles_at(model.muscles, model.axis());
    if (here.empty())
        return {};
    auto muscles = mechanics::solve_muscles_at(model.posed, model.solved, model.axis(), here,
                                               mechanics::SharingRule::equal_stress);
    if (!muscles) // a muscle without a cross-section shares the force evenly instead
        muscles = mechanics::solve_muscles_at(model.posed, model.solved, model.axis(), here,
                                              mechanics::SharingRule::equal_force);
    if (muscles)
        model.at_axis = std::move(*muscles);
    return {};
}

tl::expected<void, mechanics::MechanicsError> solve_all(BodyModel& model) {
    if (auto here = solve_here(model); !here)
        return here;
    const mechanics::Exercise& exercise = model.state.setup.exercise;
    if (!exercise.path) {
        model.sweep = {};
        return {};
    }
    return mechanics::sweep_into(exercise.body_case, *exercise.path, kSweepSteps, model.sweep);
}

void refuse(BodyModel& model, const mechanics::MechanicsError& error) {
    model.message = "That cannot be: " + error.key + " should be " + error.expected + ".";
}

void put(BodyModel& model, BodyState state, int gesture) {
    BodyModel next = model;
    next.state = std::move(state);
    if (auto solved = solve_all(next); !solved) {
        refuse(model, solved.error());
        return;
    }
    next.message.clear();
    next.history.before_change(model.state, gesture);
    model = std::move(next);
}

void restore(BodyModel& model, BodyState state) {
    model.state = std::move(state);
    model.message.clear();
    [[maybe_unused]] const auto solved = solve_all(model); // was solvable before
    assert(solved);
}

/// The variable that holds a resistance's size, or null.
struct FindSize {
    double* operator()(mechanics::Dumbbell& one) const { return &one.mass_kg; }
    double* operator()(mechanics::Barbell& one) const { return &one.mass_kg; }
    double* operator()(mechanics::Kettlebell& one) const { return &one.mass_kg; }
    double* operator()(mechanics::Cuff& one) const { return &one.mass_kg; }
    double* operator()(mechanics::PlateMachine& one) const { return &one.stack_kg; }
    double* operator()(mechanics::Cable& one) const { return &one.tension_N; }
    double* operator()(mechanics::PartnerPush& one) const { return &one.force_N; }
    double* operator()(mechanics::Band& /*one*/) const { return nullptr; }
};

bool is_a_force(const mechanics::Resistance& resistance) {
    return std::holds_alternative<mechanics::Cable>(resistance.kind) ||
           std::holds_alternative<mechanics::PartnerPush>(resistance.kind);
}

void apply(BodyModel& model, const Scrub& intent) {
    const double before = model.progress;
    model.progress = std::clamp(intent.progress, 0.0, 1.0);
    if (auto solved = solve_here(model); !solved) {
        model.progress = before;
        refuse(model, solved.error());
    }
}

void apply(BodyModel& model, const ChooseAxis& intent) {
    if (intent.index >= model.state.setup.axes.size())
        return;
    model.state.chosen = intent.index;
    [[maybe_unused]] const auto solved = solve_here(model);
    assert(solved);
}

void apply(BodyModel& model, const SetResistance& intent) {
    BodyState state = model.state;
    auto& resistances = state.setup.exercise.body_case.resistances;
    if (intent.index >= resistances.size())
        return;
    double* size = std::visit(FindSize{}, resistances[intent.index].kind);
    if (size == nullptr)
        return;
    *size = std::max(intent.size_SI, 0.0);
    put(model, std::move(state), intent.gesture);
}

void apply(BodyModel& model, const OpenExercise& intent) {
    model.progress = 0.0;
    put(model, {intent.setup, 0}, 0);
}

void apply(BodyModel& model, const UndoBody& /*intent*/) {
    if (model.history.can_undo())
        restore(model, model.history.undo(model.state));
}

void apply(BodyModel& model, const RedoBody& /*intent*/) {
    if (model.history.can_redo())
        restore(model, model.history.redo(model.state));
}

} // namespace

BodyModel make_body(const setup::BodySetup& setup, std::vector<mechanics::Muscle> muscles) {
    BodyModel model;
    model.muscles = std::move(muscles);
    restore(model, {setup, 0});
    return model;
}

void update(BodyModel& model, const BodyIntent& intent) {
    std::visit([&](const auto& one) { apply(model, one); }, intent);
}

std::optional<ResistanceSize> size_of(const mechanics::Resistance& resistance) {
    auto kind = resistance.kind;
    const double* size = std::visit(FindSize{}, kind);
    if (size == nullptr)
        return std::nullopt;
    return ResistanceSize{*size, is_a_force(resistance) ? setup::Dimension::force
                                                        : setup::Dimension::mass};
}

std::size_t most_loaded(const BodyModel& model) {
    const auto& axes = model.state.setup.axes;
    const auto largest =
        std::max_element(axes.begin(), axes.end(), [&](mechanics::Hinge a, mechanics::Hinge b) {
            return std::abs(model.solved.muscle(a)) < std::abs(model.solved.muscle(b));
        });
    return static_cast<std::size_t>(largest - axes.begin());
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
