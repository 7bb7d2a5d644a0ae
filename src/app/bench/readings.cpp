#include "app/bench/readings.h"

#include "mechanics/constants.h"
#include "setup/units/format_quantity.h"

#include <cmath>

namespace steelyard::app {

namespace {

using scene::Role;
using setup::Dimension;
using words::LeverReading;

/// How far the load is taken to move when the trade of distances is told [m]: a hand's breadth.
constexpr double kLoadTravelSi_m = 0.1;
constexpr double kLoadTravelUs_m = 4.0 * mechanics::kInch_m;

class ReadingMaker {
public:
    explicit ReadingMaker(const BenchModel& model) : model_(model) {}

    Reading make(LeverReading id, std::optional<double> value_SI, Dimension dimension,
                 Role role = Role::ink) const {
        return {id, words::name_of(id, model_.state.setup.lever),
                value_SI ? quantity(*value_SI, dimension) : std::string("none"), role};
    }

    std::string quantity(double value_SI, Dimension dimension) const {
        return setup::format_quantity(value_SI, dimension, model_.units);
    }

private:
    const BenchModel& model_;
};

/// "31 and 10 cm": how far the hand goes for a small travel of the first load.
std::string travel_text(const BenchModel& model) {
    if (model.solved.loads.empty() || !model.solved.load_arm_m ||
        *model.solved.load_arm_m <= mechanics::kSamePlace_m)
        return "none";
    const double ratio = model.solved.effort_arm_m / *model.solved.load_arm_m;
    const bool us = model.units == setup::UnitSystem::us;
    const std::string_view unit = us ? "in" : "cm";
    const double load_m = us ? kLoadTravelUs_m : kLoadTravelSi_m;
    const auto hand = setup::format_in_unit(ratio * load_m, Dimension::length, unit);
    const auto load = setup::format_in_unit(load_m, Dimension::length, unit, {3, false});
    return hand.number + " and " + load.joined();
}

double total_load_N(const mechanics::LeverResult& solved) {
    mechanics::Vec2 sum_N = mechanics::Vec2::Zero();
    for (const mechanics::ForceReading& load : solved.loads)
        sum_N += load.force_N;
    return sum_N.norm();
}

/// What two supports bear, and from what.
std::vector<Reading> beam_rows(const BenchModel& model) {
    const ReadingMaker maker(model);
    const mechanics::LeverResult& solved = model.solved;
    std::vector<Reading> rows;
    rows.push_back(maker.make(LeverReading::reaction, solved.axis_reaction_N.y() + 0.0,
                              Dimension::force, Role::reaction));
    rows.push_back(
        maker.make(LeverReading::effort, solved.effort_N, Dimension::force, Role::reaction));
    Reading load =
        maker.make(LeverReading::load_torque, total_load_N(solved), Dimension::force, Role::load);
    load.name = solved.loads.size() > 1 ? "Loads together" : "Load";
    rows.push_back(std::move(load));
    rows.push_back(maker.make(LeverReading::effort_arm, solved.effort_arm_m, Dimension::length));
    rows.push_back(
        maker.make(LeverReading::load_torque, std::abs(solved.torque_load_Nm), Dimension::torque));
    return rows;
}

/// The size of the load that is sought, in the number that it is set by.
Reading found_load(const BenchModel& model) {
    const mechanics::Lever& lever = model.state.setup.lever;
    const auto& action = lever.loads[*mechanics::sought_load(lever)].action;
    const ReadingMaker maker(model);
    const std::optional<double> found = model.solved.load_found;
    if (std::holds_alternative<mechanics::Couple>(action))
        return maker.make(LeverReading::found_load, found, Dimension::torque);
    if (!std::holds_alternative<mechanics::Weight>(action) || found.value_or(-1.0) < 0.0)
        return maker.make(LeverReading::found_load, found, Dimension::force);
    return maker.make(LeverReading::found_load, *found / lever.gravity_m_s2, Dimension::mass);
}

/// The number that the column shows largest.
void set_key(const BenchModel& model, BenchReadings& readings) {
    const mechanics::Lever& lever = model.state.setup.lever;
    const ReadingMaker maker(model);
    if (mechanics::sought_load(lever)) {
        readings.key = found_load(model);
    } else if (mechanics::rests_on_two(lever)) {
        const double first_N = model.solved.axis_reaction_N.y();
        const bool second = model.solved.effort_N.value_or(0.0) > first_N;
        readings.key = maker.make(second ? LeverReading::effort : LeverReading::reaction,
                                  second ? model.solved.effort_N : first_N, Dimension::force);
        readings.key.name =
            "Bears most: " + (second ? lever.effort.name : mechanics::axis_name(lever));
    } else {
        readings.key = maker.make(LeverReading::ideal_advantage, model.solved.ideal_advantage,
                                  Dimension::number);
        readings.key.name = "Mechanical advantage";
        readings.key_note = model.solved.ideal_advantage ? "effort arm ÷ load arm" : "";
    }
}

std::vector<Reading> reading_rows(const BenchModel& model) {
    if (mechanics::rests_on_two(model.state.setup.lever))
        return beam_rows(model);
    const ReadingMaker maker(model);
    const mechanics::LeverResult& solved = model.solved;
    std::optional<double> effort_N = solved.effort_N;
    if (model.state.hand_N)
        effort_N = model.state.hand_N;
    std::vector<Reading> rows;
    rows.push_back(maker.make(LeverReading::effort, effort_N, Dimension::force, Role::effort));
    if (model.state.hand_N)
        rows.back().name = "Effort, by hand";
    else if (mechanics::sought_load(model.state.setup.lever))
        rows.back().name = "Effort, known";
    Reading load =
        maker.make(LeverReading::load_torque, total_load_N(solved), Dimension::force, Role::load);
    load.name = solved.loads.size() > 1 ? "Loads together" : "Load";
    rows.push_back(std::move(load));
    rows.push_back(maker.make(LeverReading::effort_arm, solved.effort_arm_m, Dimension::length));
    rows.push_back(maker.make(LeverReading::load_arm, solved.load_arm_m, Dimension::length));
    rows.push_back(
        maker.make(LeverReading::load_torque, std::abs(solved.torque_load_Nm), Dimension::torque));
    rows.push_back(
        maker.make(LeverReading::actual_advantage, solved.actual_advantage, Dimension::number));
    const double reaction_N =
        model.state.hand_N
            ? mechanics::balance_by_hand(model.state.setup.lever, solved, *model.state.hand_N)
                  .axis_reaction_N.norm()
            : solved.axis_reaction_N.norm();
    rows.push_back(maker.make(LeverReading::reaction, reaction_N, Dimension::force));
    if (solved.torque_friction_Nm != 0.0)
        rows.push_back(maker.make(LeverReading::friction, std::abs(solved.torque_friction_Nm),
                                  Dimension::torque));
    Reading travel = maker.make(LeverReading::travel, std::nullopt, Dimension::length);
    travel.name = "Hand and load travel";
    travel.value = travel_text(model);
    rows.push_back(std::move(travel));
    return rows;
}

} // namespace

BenchReadings read_bench(const BenchModel& model) {
    const mechanics::Lever& lever = model.state.setup.lever;
    BenchReadings readings;
    readings.headline = words::class_name(model.solved);
    readings.sentence = words::class_sentence(lever, model.solved);
    for (std::string& message : words::lever_messages(lever, model.solved, model.units))
        if (message != readings.sentence)
            readings.notes.push_back(std::move(message));
    if (const auto limb = model.state.setup.limb)
        if (std::string off = setup::axis_off_joint(*limb, lever); !off.empty())
            readings.notes.push_back(std::move(off));
    set_key(model, readings);
    readings.rows = reading_rows(model);
    return readings;
}

} // namespace steelyard::app
