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
        return {id, std::string(words::name_of(id)),
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

std::vector<Reading> reading_rows(const BenchModel& model) {
    const ReadingMaker maker(model);
    const mechanics::LeverResult& solved = model.solved;
    std::optional<double> effort_N = solved.effort_N;
    if (model.state.hand_N)
        effort_N = model.state.hand_N;
    std::vector<Reading> rows;
    rows.push_back(maker.make(LeverReading::effort, effort_N, Dimension::force, Role::effort));
    if (model.state.hand_N)
        rows.back().name = "Effort, by hand";
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
    readings.key = ReadingMaker(model).make(LeverReading::ideal_advantage,
                                            model.solved.ideal_advantage, Dimension::number);
    readings.key.name = "Mechanical advantage";
    readings.key_note = model.solved.ideal_advantage ? "effort arm ÷ load arm" : "";
    readings.rows = reading_rows(model);
    return readings;
}

} // namespace steelyard::app
