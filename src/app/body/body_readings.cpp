#include "app/body/body_readings.h"

#include "scene/body_drawing.h"
#include "scene/body_forces.h"
#include "setup/body_words.h"
#include "setup/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Role;
using setup::BodyQuantity;
using setup::Dimension;

/// A share that would read as 0 %.
constexpr double kNextToNothing = 0.005;

double size_Nm(const BodyModel& model, std::size_t axis) {
    return std::abs(model.solved.muscle(model.state.setup.axes[axis]));
}

std::string sentence_about(const BodyModel& model, std::size_t most) {
    const auto& axes = model.state.setup.axes;
    if (axes.size() < 2)
        return fmt::format("The muscles must work in {}.",
                           setup::asked_of_muscles(axes[most], model.solved.muscle(axes[most])));
    std::size_t second = most == 0 ? 1 : 0;
    for (std::size_t i = 0; i < axes.size(); ++i)
        if (i != most && size_Nm(model, i) > size_Nm(model, second))
            second = i;
    const double largest_Nm = size_Nm(model, most);
    const double share = largest_Nm > 0.0 ? size_Nm(model, second) / largest_Nm : 0.0;
    const std::string word = scene::joint_word(axes[second]);
    if (word == scene::joint_word(axes[most]))
        return fmt::format("in {}, and {:.0f} % of that in {}.",
                           mechanics::hinge_info(axes[most]).positive, 100.0 * share,
                           mechanics::hinge_info(axes[second]).positive);
    if (share < kNextToNothing)
        return fmt::format("and next to nothing at the {}.", word);
    return fmt::format("and {:.0f} % of that at the {}.", 100.0 * share, word);
}

std::vector<BodyBar> bars_of(const BodyModel& model, std::size_t most, setup::UnitSystem units) {
    const double largest_Nm = std::max(size_Nm(model, most), 1e-9);
    std::vector<BodyBar> bars;
    for (std::size_t i = 0; i < model.state.setup.axes.size(); ++i) {
        const double torque_Nm = size_Nm(model, i);
        bars.push_back({scene::axis_word(model.state.setup.axes, model.state.setup.axes[i]),
                        setup::format_quantity(torque_Nm, Dimension::torque, units),
                        torque_Nm / largest_Nm});
    }
    return bars;
}

bool has_paired_and_single_axes(const BodyModel& model) {
    const auto& axes = model.state.setup.axes;
    const auto is_paired = [](Hinge hinge) { return mechanics::hinge_info(hinge).mirror != hinge; };
    const auto paired = std::count_if(axes.begin(), axes.end(), is_paired);
    return paired > 0 && paired < std::ssize(axes);
}

std::string balance_sentence(mechanics::BalanceStatus status) {
    using mechanics::BalanceStatus;
    switch (status) {
    case BalanceStatus::held:
    case BalanceStatus::balanced:
        return {};
    case BalanceStatus::steadied:
        return "A light touch keeps the balance.";
    case BalanceStatus::would_topple:
        return "Nobody stands like this: the body would topple.";
    case BalanceStatus::would_slip:
        return "The feet would slip.";
    case BalanceStatus::lifts_off:
        return "The resistance lifts the body off the floor.";
    }
    return {};
}

std::optional<std::size_t> main_load(const BodyModel& model) {
    return scene::main_force(model.posed, model.solved, model.axis());
}

void add_rows(const BodyModel& model, setup::UnitSystem units, BodyReadings& readings) {
    const auto text = [&](double value, Dimension dimension) {
        return setup::format_quantity(value, dimension, units);
    };
    const Hinge hinge = model.axis();
    const double torque_Nm = std::abs(model.solved.muscle(hinge));
    readings.rows.push_back(
        {BodyQuantity::torque,
         fmt::format("Torque, {}", setup::asked_of_muscles(hinge, model.solved.muscle(hinge))),
         text(torque_Nm, Dimension::torque), Role::ink});
    if (const auto load = main_load(model))
        readings.rows.push_back(
            {BodyQuantity::load_arm, "Load arm",
             text(mechanics::arm_of(model.solved, *load, hinge).arm_m, Dimension::length),
             Role::load});
    if (!model.at_axis)
        return;
    const mechanics::MuscleSolution& solution = model.at_axis->solution;
    const std::optional<double> muscles_N = muscle_force(model);
    const bool rest = solution.outcome == mechanics::MuscleOutcome::no_torque;
    readings.rows.push_back({BodyQuantity::muscles, "Muscles pull",
                             muscles_N ? text(*muscles_N, Dimension::force)
                             : rest    ? "nothing"
                                       : "others work",
                             Role::effort});
    readings.rows.push_back({BodyQuantity::joint_reaction, "Joint reaction",
                             solution.joint_reaction_N
                                 ? text(solution.joint_reaction_N->norm(), Dimension::force)
                                 : "not known",
                             Role::reaction});
    const double load_N = resistance_N(model.solved);
    if (muscles_N && load_N > 1.0)
        readings.pair =
            ForcePair{load_N, *muscles_N,
                      fmt::format("{} times the load", setup::format_number(*muscles_N / load_N))};
}

} // namespace

BodyReadings read_axes(const BodyModel& model, setup::UnitSystem units) {
    BodyReadings readings;
    const std::size_t most = most_loaded(model);
    readings.headline = "the " + scene::joint_word(model.state.setup.axes[most]);
    readings.sentence = sentence_about(model, most);
    readings.bars = bars_of(model, most, units);
    readings.mixed_sides = has_paired_and_single_axes(model);
    readings.at = "At the " + scene::axis_word(model.state.setup.axes, model.axis());
    readings.balance = balance_sentence(model.solved.ground.status);
    add_rows(model, units, readings);
    return readings;
}

std::vector<setup::ComputedStep> steps_of(const BodyModel& model, BodyQuantity id,
                                          setup::UnitSystem units) {
    const setup::ExplainedHinge at{model.posed,      model.solved,
                                   model.axis(),     model.shown.muscles,
                                   model.shown.rule, model.at_axis ? &*model.at_axis : nullptr};
    return setup::body_steps(id, at, main_load(model), units);
}

} // namespace steelyard::app
