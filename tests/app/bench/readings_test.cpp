#include "app/bench/readings.h"
#include "app/bench/sample_bench.h"
#include "app/shelf/shelf.h"
#include "catch.h"
#include "mechanics/lever/random_lever.h"
#include "setup/units/format_quantity.h"

#include <algorithm>
#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using setup::Dimension;

namespace {

std::string value_named(const BenchReadings& readings, const std::string& name) {
    for (const Reading& row : readings.rows)
        if (row.name == name)
            return row.value;
    return "there is no reading " + name;
}

std::string text_of(const std::optional<double>& value_SI, Dimension dimension,
                    setup::UnitSystem units) {
    return value_SI ? setup::format_quantity(*value_SI, dimension, units) : "none";
}

/// Every reading against the solver called anew on the same lever.
void check_against_solver(const BenchModel& model) {
    const auto solved = mechanics::solve_lever(model.state.setup.lever);
    REQUIRE(solved);
    const BenchReadings shown = read_bench(model);
    const auto units = model.units;
    CHECK(shown.headline == words::class_name(*solved));
    if (mechanics::rests_on_two(model.state.setup.lever)) {
        const std::string second = "Push, " + model.state.setup.lever.effort.name;
        CHECK(value_named(shown, second) == text_of(solved->effort_N, Dimension::force, units));
        return;
    }
    if (mechanics::sought_load(model.state.setup.lever)) {
        CHECK(value_named(shown, "Effort, known") ==
              text_of(solved->effort_N, Dimension::force, units));
        return;
    }
    CHECK(value_named(shown, "Effort") == text_of(solved->effort_N, Dimension::force, units));
    CHECK(value_named(shown, "Effort arm") ==
          text_of(solved->effort_arm_m, Dimension::length, units));
    CHECK(value_named(shown, "Load arm") == text_of(solved->load_arm_m, Dimension::length, units));
    CHECK(value_named(shown, "Load torque") ==
          text_of(std::abs(solved->torque_load_Nm), Dimension::torque, units));
    CHECK(value_named(shown, "Actual advantage") ==
          text_of(solved->actual_advantage, Dimension::number, units));
    CHECK(value_named(shown, "Axis reaction") ==
          text_of(solved->axis_reaction_N.norm(), Dimension::force, units));
    CHECK(shown.key.value == text_of(solved->ideal_advantage, Dimension::number, units));
    CHECK(shown.headline == words::class_name(*solved));
}

std::string everything_said(const BenchReadings& readings) {
    std::string all = readings.headline + '\n' + readings.sentence + '\n' + readings.key.value;
    for (const std::string& note : readings.notes)
        all += '\n' + note;
    for (const Reading& row : readings.rows)
        all += '\n' + row.name + ' ' + row.value;
    return all;
}

} // namespace

TEST_CASE("readings of the shipped levers are the solver's numbers to the shown digits") {
    const LeverShelf shelf = read_levers(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups");
    CHECK(shelf.faults.empty());
    REQUIRE(shelf.setups.size() >= 12);
    for (const auto& [setup, origin, file] : shelf.setups)
        for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
            BenchModel model = make_bench(setup, std::nullopt);
            model.units = units;
            INFO(setup.head.name);
            check_against_solver(model);
        }
}

TEST_CASE("readings of any lever are the solver's numbers, and never an infinity or a minus zero") {
    mechanics::RandomNumbers random(5);
    for (int i = 0; i < 2000; ++i) {
        setup::LeverSetup setup;
        setup.lever = mechanics::random_lever(random, {true, true, i % 3 == 0});
        BenchModel model = make_bench(setup, std::nullopt);
        model.units = i % 2 == 0 ? setup::UnitSystem::si : setup::UnitSystem::us;
        check_against_solver(model);
        const std::string said = everything_said(read_bench(model));
        INFO(said);
        CHECK(said.find("nan") == std::string::npos);
        CHECK(said.find(" inf") == std::string::npos);
        CHECK(said.find("−0\u00A0") == std::string::npos);
        CHECK(said.find("-0") == std::string::npos);
    }
}

TEST_CASE("the sample reads what is worked by hand") {
    const BenchReadings shown = read_bench(sample_bench());
    // 98.0665 N × 0.4 m = 39.2 N·m = 65.4 N × 0.6 m; 0.6 / 0.4 = 1.5; 98.1 N + 65.4 N = 163 N.
    CHECK(shown.headline == "First class");
    CHECK(value_named(shown, "Effort") == "65.4\u00A0N");
    CHECK(value_named(shown, "Load") == "98.1\u00A0N");
    CHECK(value_named(shown, "Load torque") == "39.2\u00A0N·m");
    CHECK(value_named(shown, "Axis reaction") == "163\u00A0N");
    CHECK(shown.key.value == "1.50");
    CHECK(value_named(shown, "Hand and load travel") == "15.0 and 10\u00A0cm");
}

TEST_CASE("an effort by hand is shown as set, with the reaction that goes with it") {
    BenchModel model = sample_bench();
    update(model, TakeByHand{});
    update(model, SetNumber{{kHand, LeverField::force}, 100.0});
    const BenchReadings shown = read_bench(model);
    CHECK(value_named(shown, "Effort, by hand") == "100\u00A0N");
    CHECK(value_named(shown, "Axis reaction") == "198\u00A0N"); // 98.0665 N + 100 N
    // A hand on the solved effort gives the solved reaction.
    update(model, SetNumber{{kHand, LeverField::force}, *model.solved.effort_N});
    CHECK(value_named(read_bench(model), "Axis reaction") == "163\u00A0N");
}

TEST_CASE("a line of effort through the axis reads none, and says why") {
    BenchModel model = sample_bench();
    update(model, SetNumber{{kHand, LeverField::direction}, 0.0});
    const BenchReadings shown = read_bench(model);
    CHECK(value_named(shown, "Effort") == "none");
    CHECK(value_named(shown, "Actual advantage") == "none");
    REQUIRE_FALSE(shown.notes.empty());
    CHECK(shown.notes.front().find("axis") != std::string::npos);
}

TEST_CASE("what is sought of a lever stands largest") {
    BenchModel model = sample_bench();
    update(model, SeekLoad{0});
    CHECK(read_bench(model).key.name == "Load found");
    CHECK(read_bench(model).key.value == "10.0\u00A0kg"); // the effort was that of 10 kg
    update(model, ChangeSupports{true});
    // 98.1 N at the left end of a beam with supports at 0.4 m and 1 m: the second must hold down.
    const BenchReadings beam = read_bench(model);
    CHECK(beam.headline == "Two supports");
    CHECK(beam.key.value == "163\u00A0N");
    CHECK(value_named(beam, "Push, second support") == "−65.4\u00A0N");
    CHECK_FALSE(beam.notes.empty());
}
