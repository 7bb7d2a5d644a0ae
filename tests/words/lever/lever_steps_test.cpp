#include "catch.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/setup.h"
#include "setup/units/format_quantity.h"
#include "words/lever/lever_steps.h"
#include "words/lever/lever_words.h"
#include "words/worked_number.h"

#include <cmath>
#include <string>

using namespace steelyard::setup;
using namespace steelyard::words;
namespace mechanics = steelyard::mechanics;

namespace {

constexpr LeverReading kReadings[] = {
    LeverReading::lever_class,      LeverReading::effort,    LeverReading::effort_arm,
    LeverReading::load_torque,      LeverReading::load_arm,  LeverReading::ideal_advantage,
    LeverReading::actual_advantage, LeverReading::reaction,  LeverReading::travel,
    LeverReading::friction,         LeverReading::found_load};

std::vector<LeverSetup> shipped_levers() {
    std::vector<LeverSetup> levers;
    const auto listings = list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups");
    REQUIRE(listings.has_value());
    for (const SetupListing& listing : *listings)
        if (const auto* lever = std::get_if<LeverSetup>(&*listing.setup))
            levers.push_back(*lever);
    REQUIRE(levers.size() > 15);
    return levers;
}

/// The reading itself, or nothing when there is none.
std::optional<double> reading_of(LeverReading reading, const mechanics::LeverResult& result) {
    switch (reading) {
    case LeverReading::lever_class:
        return result.lever_class ? std::optional(static_cast<double>(*result.lever_class))
                                  : std::nullopt;
    case LeverReading::effort:
        return result.effort_N;
    case LeverReading::effort_arm:
        return result.effort_arm_m;
    case LeverReading::load_torque:
        return result.torque_load_Nm;
    case LeverReading::load_arm:
        return result.load_arm_m;
    case LeverReading::ideal_advantage:
        return result.ideal_advantage;
    case LeverReading::actual_advantage:
        return result.actual_advantage;
    case LeverReading::reaction:
        return result.axis_reaction_N.norm();
    case LeverReading::travel:
        return std::nullopt; // equal to the ideal advantage, checked apart
    case LeverReading::friction:
        return std::nullopt;
    case LeverReading::found_load:
        return std::nullopt; // a force or its mass, checked apart
    }
    return std::nullopt;
}

} // namespace

TEST_CASE("the last step of every explanation is the reading", "[steps]") {
    for (const LeverSetup& setup : shipped_levers()) {
        const auto result = mechanics::solve_lever(setup.lever);
        REQUIRE(result.has_value());
        for (const UnitSystem units : {UnitSystem::si, UnitSystem::us})
            for (const LeverReading reading : kReadings) {
                INFO(setup.head.name << ", " << name_of(reading, setup.lever));
                const auto steps = lever_steps(reading, setup.lever, *result, units);
                REQUIRE_FALSE(steps.empty());
                for (const ComputedStep& step : steps) {
                    CHECK_FALSE(step.title.empty());
                    CHECK_FALSE(step.result.empty());
                    CHECK(std::isfinite(step.value_SI));
                }
                if (const auto value = reading_of(reading, *result))
                    CHECK(steps.back().value_SI == Approx(*value).epsilon(1e-12).margin(1e-12));
            }
    }
}

TEST_CASE("every formula, worked with a pocket calculator, gives the result beside it", "[steps]") {
    int worked = 0;
    for (const LeverSetup& setup : shipped_levers()) {
        const auto result = mechanics::solve_lever(setup.lever);
        REQUIRE(result.has_value());
        for (const UnitSystem units : {UnitSystem::si, UnitSystem::us})
            for (const LeverReading reading : kReadings)
                for (const ComputedStep& step : lever_steps(reading, setup.lever, *result, units)) {
                    if (step.numbers.empty())
                        continue;
                    INFO(setup.head.name << ": " << step.title << ": " << step.symbols << " = "
                                         << step.numbers << " = " << step.result);
                    const auto value = WorkedNumber::of(step.numbers);
                    REQUIRE(value.has_value());
                    const double expected = step.dimension == Dimension::number
                                                ? step.value_SI
                                                : from_SI(step.value_SI, step.dimension,
                                                          formula_unit(step.dimension, units));
                    // Numbers are shown with four figures: half a unit in the fourth of each
                    // factor, and sums may cancel half a figure more.
                    CHECK_THAT(*value, WithinRel(expected, 3e-3) || WithinAbs(expected, 2e-3));
                    ++worked;
                }
    }
    CHECK(worked > 1000);
}

TEST_CASE("the distance trade is the inverse of the advantage, and work in is work out",
          "[steps]") {
    for (const LeverSetup& setup : shipped_levers()) {
        const auto result = mechanics::solve_lever(setup.lever);
        REQUIRE(result.has_value());
        const auto steps = lever_steps(LeverReading::travel, setup.lever, *result, UnitSystem::si);
        if (steps.size() < 4)
            continue;
        INFO(setup.head.name);
        CHECK(steps[1].value_SI == Approx(steps[2].value_SI).epsilon(1e-12));
        CHECK(steps.back().value_SI == Approx(*result->ideal_advantage).epsilon(1e-12));
    }
}

TEST_CASE("the steps of a wheelbarrow read as a textbook would write them", "[steps]") {
    // OpenStax College Physics 2e, Example 9.3: 45.0 kg at 7.50 cm, hands at 1.02 m, g = 9.80.
    mechanics::Lever lever;
    lever.path_m = {{0.0, 0.0}, {1.02, 0.0}};
    lever.axis_at_m = 0.0;
    lever.loads = {{"barrow and load", mechanics::Weight{0.075, 45.0}}};
    lever.effort = {"hands", 1.02, mechanics::kUp_rad};
    lever.gravity_m_s2 = 9.80;
    const auto result = mechanics::solve_lever(lever);
    REQUIRE(result.has_value());
    const auto steps = lever_steps(LeverReading::effort, lever, *result, UnitSystem::si);
    CHECK(steps.back().symbols == "Fₑ = |τₗ| ÷ dₑ");
    CHECK(steps.back().numbers == "33.08\u00A0N·m ÷ 1.02\u00A0m");
    CHECK(steps.back().result == "32.43\u00A0N"); // printed there: 32.4 N
    CHECK(class_name(*result) == "Second class");
    CHECK(class_sentence(lever, *result) == "The load (barrow and load) is between axis and "
                                            "effort.");
    const auto load = load_steps(0, lever, *result, UnitSystem::si);
    CHECK(load.front().numbers == "45\u00A0kg × 9.8\u00A0m/s²");
    CHECK(load.front().result == "441\u00A0N");
}

TEST_CASE("the steps to a sought load begin with the known effort and end with its mass",
          "[steps]") {
    // 30 N at 0.8 m make 24 N·m, over 0.2 m 120 N, which 12 kg weigh at 10 m/s².
    mechanics::Lever lever;
    lever.gravity_m_s2 = 10.0;
    lever.axis_at_m = 0.2;
    lever.loads = {{"stone", mechanics::Weight{0.0, 0.0}}};
    lever.sought = mechanics::SoughtLoad{0, 30.0};
    const auto result = mechanics::solve_lever(lever);
    REQUIRE(result.has_value());
    const auto steps = lever_steps(LeverReading::found_load, lever, *result, UnitSystem::si);
    REQUIRE(steps.size() > 3);
    CHECK(steps[steps.size() - 2].numbers == "24\u00A0N·m ÷ 0.2\u00A0m");
    CHECK(steps[steps.size() - 2].result == "120\u00A0N");
    CHECK(steps.back().value_SI == Approx(12.0).epsilon(1e-12));
    CHECK(found_load_text(lever, *result, UnitSystem::si) == "12.0\u00A0kg (120\u00A0N)");
    CHECK(lever_steps(LeverReading::effort, lever, *result, UnitSystem::si).size() == 1);
}

TEST_CASE("a beam on two supports is told by its supports' names", "[steps]") {
    mechanics::Lever lever;
    lever.gravity_m_s2 = 10.0;
    lever.path_m = {{0.0, 0.0}, {4.0, 0.0}};
    lever.axis_at_m = 1.0;
    lever.effort = {"right trestle", 3.0, mechanics::kUp_rad};
    lever.loads = {{"crate", mechanics::Weight{1.5, 30.0}}};
    lever.sought = mechanics::SoughtReactions{"left trestle"};
    const auto result = mechanics::solve_lever(lever);
    REQUIRE(result.has_value());
    CHECK(class_name(*result) == "Two supports");
    CHECK(class_sentence(lever, *result).find("Left trestle and right trestle share") !=
          std::string::npos);
    CHECK(name_of(LeverReading::effort, lever) == "Push, right trestle");
    const auto push = lever_steps(LeverReading::effort, lever, *result, UnitSystem::si);
    CHECK(push.back().numbers == "150\u00A0N·m ÷ 2\u00A0m");
    CHECK(push.back().value_SI == Approx(75.0).epsilon(1e-12));
    const auto other = lever_steps(LeverReading::reaction, lever, *result, UnitSystem::si);
    CHECK(other.back().value_SI == Approx(225.0).epsilon(1e-12));
    CHECK(lever_summary(lever, *result, UnitSystem::si).find("advantage") == std::string::npos);

    // 40 kg 1 m beyond the right one: 400 N over 2 m would have to hold the left end down.
    lever.loads = {{"crate", mechanics::Weight{4.0, 40.0}}};
    const auto tips = mechanics::solve_lever(lever);
    REQUIRE(tips.has_value());
    const auto messages = lever_messages(lever, *tips, UnitSystem::si);
    REQUIRE_FALSE(messages.empty());
    CHECK(messages.front() == "The beam lifts off left trestle and tips over right trestle: a "
                              "torque of 400\u00A0N·m is left over about right trestle. To stay, "
                              "it would have to be held down at left trestle with 200\u00A0N.");
}
