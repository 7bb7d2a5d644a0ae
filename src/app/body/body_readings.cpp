#include "app/body/body_readings.h"

#include "mechanics/range/touch.h"
#include "scene/body/body_drawing.h"
#include "scene/body/body_forces.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"
#include "words/body/body_words.h"
#include "words/body/load_at_joint.h"
#include "words/body/muscle_credit.h"
#include "words/body/rope_words.h"
#include "words/body/strength_words.h"
#include "words/letter_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Role;
using setup::Dimension;
using words::BodyQuantity;

/// A share that would read as 0 %.
constexpr double kNextToNothing = 0.005;

using Shares = std::vector<words::AxisShare>;

/// "both hips", "the low back".
std::string at_words(const words::AxisShare& share) {
    return share.both ? words::both_sides_word(share.axis) : "the " + words::joint_word(share.axis);
}

/// The other axes whose torque is that of the largest, and the one that comes next to it.
struct Ranked {
    std::vector<std::size_t> equal;
    std::size_t next = 0;
};

Ranked ranked(const Shares& shares, std::size_t most) {
    Ranked found;
    found.equal = words::as_loaded(shares, most);
    found.next = most == 0 ? 1 : 0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        if (i == most)
            continue;
        if (shares[i].torque_Nm > shares[found.next].torque_Nm)
            found.next = i;
    }
    return found;
}

/// What the muscles of an axis must do, as anatomy names it in the pose.
std::string motion_asked(const BodyModel& model, Hinge hinge) {
    const auto named_by = [&](const std::vector<mechanics::Muscle>& listed) {
        return words::motion_asked(listed, model.posed.pose, hinge, model.solved.muscle(hinge));
    };
    return hinge == model.axis()
               ? named_by(model.shown.muscles)
               : named_by(words::shown_muscles(model.state.setup, model.muscles, hinge));
}

std::string sentence_about(const BodyModel& model, const Shares& shares, std::size_t most) {
    const Hinge first = shares[most].axis;
    if (shares.size() < 2)
        return fmt::format("The muscles must work in {}.", motion_asked(model, first));
    const double largest_Nm = shares[most].torque_Nm;
    const Ranked others = ranked(shares, most);
    if (!others.equal.empty() && largest_Nm > 0.0) {
        std::vector<std::string> places;
        for (const std::size_t i : others.equal)
            places.push_back(at_words(shares[i]));
        return fmt::format("and the same at {}.", words::listing(places, ""));
    }
    const words::AxisShare& second = shares[others.next];
    const double part = largest_Nm > 0.0 ? second.torque_Nm / largest_Nm : 0.0;
    if (words::joint_word(second.axis) == words::joint_word(first))
        return fmt::format("in {}, and {:.0f} % of that in {}.", motion_asked(model, first),
                           100.0 * part, motion_asked(model, second.axis));
    if (part < kNextToNothing)
        return fmt::format("and next to nothing at {}.", at_words(second));
    return fmt::format("and {:.0f} % of that at {}.", 100.0 * part, at_words(second));
}

std::vector<BodyBar> bars_of(const Shares& shares, std::size_t most, setup::UnitSystem units) {
    const double largest_Nm = std::max(shares[most].torque_Nm, 1e-9);
    std::vector<BodyBar> bars;
    const auto text = [&](double torque_Nm) {
        return setup::format_quantity(torque_Nm, Dimension::torque, units);
    };
    for (const words::AxisShare& share : shares)
        bars.push_back({{share.name, text(share.torque_Nm)},
                        {share.one, text(share.one_Nm)},
                        share.torque_Nm / largest_Nm,
                        share.both ? share.one_Nm / share.torque_Nm : 1.0});
    return bars;
}

/// ", abduction" where the joint turns about several axes and its name does not say about which.
std::string motion_of(const BodyModel& model, const std::string& name) {
    const auto joint = mechanics::hinge_info(model.axis()).joint;
    const auto& segment = mechanics::segment_info(mechanics::joint_info(joint).segment);
    const std::string motion = words::movement_word(model.axis());
    if (segment.hinge_count < 3 || name.find(motion) != std::string::npos)
        return {};
    return ", " + motion;
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

/// "The left knee lies 8.2 cm below the floor."
std::string sunk_sentence(const BodyModel& model, setup::UnitSystem units) {
    const auto sunk = mechanics::find_sunk_part(model.posed.body, model.solved.placement);
    if (!sunk)
        return {};
    const auto joint = mechanics::joint_of(sunk->segment);
    const std::string part =
        sunk->is_tip || !joint
            ? fmt::format("end of the {}", mechanics::segment_info(sunk->segment).label)
            : std::string(mechanics::joint_info(*joint).label);
    return fmt::format(
        "The {} lies {} below the floor.", part,
        setup::format_quantity(sunk->depth_m, setup::Dimension::length, units, {2, true}));
}

std::optional<std::size_t> main_load(const BodyModel& model) {
    return scene::main_force(model.posed, model.solved, model.axis());
}

/// What stands in place of a muscle force.
std::string_view word_without_force(mechanics::MuscleOutcome outcome) {
    using mechanics::MuscleOutcome;
    switch (outcome) {
    case MuscleOutcome::balanced:
    case MuscleOutcome::no_torque:
        return "nothing";
    case MuscleOutcome::not_modelled:
        return "not modelled";
    case MuscleOutcome::beyond_cross_section:
        return "too much to be true";
    case MuscleOutcome::antagonists_work:
    case MuscleOutcome::no_arm:
        return "others work";
    }
    return "";
}

/// The share, its source and what has to stand beside it.
std::string strength_sentence(const words::StrengthBeside& beside) {
    return fmt::format("{} ({}). {}", words::capitalised(words::share_words(beside)),
                       beside.measured.citation.text, words::kStrengthCaution);
}

/// "Both hips together".
std::string both_together(Hinge hinge) {
    return words::capitalised(words::both_sides_word(hinge)) + " together";
}

/// The tension of a column's rope, which is not the weight of its stack; unfolds to where it comes
/// from.
void add_rope_row(const BodyModel& model, const mechanics::BodyForce& force,
                  setup::UnitSystem units, BodyReadings& readings) {
    if (force.origin != mechanics::ForceOrigin::resistance)
        return;
    const mechanics::Resistance& resistance = model.posed.resistances[force.index];
    if (const std::string stack = words::stack_words(resistance, units); !stack.empty())
        readings.rows.push_back(
            {BodyQuantity::torque, "Tension, " + stack,
             setup::format_quantity(force.force_N.norm(), Dimension::force, units), Role::load});
}

void add_rows(const BodyModel& model, const words::AxisShare& share, setup::UnitSystem units,
              BodyReadings& readings) {
    const auto text = [&](double value, Dimension dimension) {
        return setup::format_quantity(value, dimension, units);
    };
    const Hinge hinge = model.axis();
    const double torque_Nm = std::abs(model.solved.muscle(hinge));
    readings.rows.push_back({BodyQuantity::torque,
                             fmt::format("Torque, {}", motion_asked(model, hinge)),
                             text(torque_Nm, Dimension::torque), Role::ink});
    if (const auto beside =
            words::strength_beside(model.state.setup.person, model.shown.muscles, model.posed.pose,
                                   hinge, model.solved.muscle(hinge)))
        readings.strength = strength_sentence(*beside);
    if (share.both)
        readings.rows.push_back({BodyQuantity::torque_of_both, both_together(hinge),
                                 text(share.torque_Nm, Dimension::torque), Role::ink});
    if (const auto load = main_load(model)) {
        add_rope_row(model, model.solved.forces[*load], units, readings);
        const bool ground = model.solved.forces[*load].origin == mechanics::ForceOrigin::contact;
        readings.rows.push_back(
            {BodyQuantity::load_arm, ground ? "Moment arm, ground's push" : "Load arm",
             text(mechanics::arm_of(model.solved, *load, hinge).arm_m, Dimension::length),
             ground ? Role::reaction : Role::load});
    }
    if (!model.at_axis)
        return;
    const mechanics::MuscleSolution& solution = model.at_axis->solution;
    const std::optional<double> muscles_N = muscle_force(model);
    readings.rows.push_back({BodyQuantity::muscles, "Muscles pull",
                             muscles_N ? text(*muscles_N, Dimension::force)
                                       : std::string(word_without_force(solution.outcome)),
                             Role::effort});
    if (muscles_N)
        readings.basis = words::basis_sentence(model.shown.muscles, *model.at_axis);
    readings.why_no_force = words::why_no_force(solution, hinge, units);
    readings.rows.push_back({BodyQuantity::joint_reaction, "Joint reaction",
                             solution.joint_reaction_N
                                 ? text(solution.joint_reaction_N->norm(), Dimension::force)
                                 : "not known",
                             Role::reaction});
    const auto load = words::load_at_joint(model.solved, hinge);
    if (muscles_N && load && load->size_N() > 1.0)
        readings.pair = ForcePair{
            load->size_N(), *muscles_N,
            fmt::format("{} times the load", setup::format_number(*muscles_N / load->size_N()))};
}

} // namespace

BodyReadings read_axes(const BodyModel& model, setup::UnitSystem units) {
    BodyReadings readings;
    const Shares shares = words::axis_shares(model.state.setup.axes, model.solved);
    const std::size_t most = words::most_loaded(shares);
    readings.headline = at_words(shares[most]);
    readings.sentence = sentence_about(model, shares, most);
    readings.bars = bars_of(shares, most, units);
    const words::AxisShare& here = shares[model.state.chosen];
    const bool each = here.one.rfind("each ", 0) == 0;
    readings.at =
        fmt::format("At {}{}{}", each ? "" : "the ", here.one, motion_of(model, here.one));
    readings.both_sides = std::any_of(shares.begin(), shares.end(),
                                      [](const words::AxisShare& share) { return share.both; });
    readings.balance = balance_sentence(model.solved.ground.status);
    readings.sunk = sunk_sentence(model, units);
    add_rows(model, here, units, readings);
    return readings;
}

std::vector<words::ComputedStep> steps_of(const BodyModel& model, BodyQuantity id,
                                          setup::UnitSystem units) {
    const words::ExplainedHinge at{model.posed,      model.solved,
                                   model.axis(),     model.shown.muscles,
                                   model.shown.rule, model.at_axis ? &*model.at_axis : nullptr};
    return words::body_steps(id, at, main_load(model), units);
}

} // namespace steelyard::app
