#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"
#include "mechanics/lever/random_lever.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// What separates hand-worked short decimals from computed ones: rounding over a few operations.
constexpr double kRounding = 1e-12;

LeverResult solved(const Lever& lever) {
    const auto result = solve_lever(lever);
    REQUIRE(result.has_value());
    return *result;
}

/// 1 m, axis at 0.2 m, gravity 10 m/s²: 30 N down at the right end is known, the stone at the left
/// end is sought. 30 N × 0.8 m = 24 N·m = 120 N × 0.2 m, so 12 kg.
Lever known_push() {
    Lever lever;
    lever.gravity_m_s2 = 10.0;
    lever.axis_at_m = 0.2;
    lever.loads = {{"stone", Weight{0.0, 999.0}}};
    lever.sought = SoughtLoad{0, 30.0};
    return lever;
}

/// A plank of 4 m and 10 kg on trestles at 1 m and 3 m, gravity 10 m/s².
Lever plank() {
    Lever lever;
    lever.gravity_m_s2 = 10.0;
    lever.path_m = {{0.0, 0.0}, {4.0, 0.0}};
    lever.axis_at_m = 1.0;
    lever.effort = {"right", 3.0, kUp_rad};
    lever.own_weight = {10.0, std::nullopt};
    lever.loads.clear();
    lever.sought = SoughtReactions{"left"};
    return lever;
}

} // namespace

TEST_CASE("a known effort tells the load that it balances", "[lever][sought]") {
    Lever lever = known_push();
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::ok);
    CHECK_THAT(result.load_found.value(), WithinRel(120.0, kRounding));
    CHECK_THAT(result.loads[0].force_N.y(), WithinRel(-120.0, kRounding));
    CHECK(result.effort_N == 30.0);
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(150.0, kRounding));
    CHECK(result.lever_class == LeverClass::first);
    CHECK_THAT(result.actual_advantage.value(), WithinRel(4.0, kRounding));
    fill_in_found_load(result, lever);
    CHECK_THAT(std::get<Weight>(lever.loads[0].action).mass_kg, WithinRel(12.0, kRounding));
}

TEST_CASE("other loads and the own weight take their part of a known effort", "[lever][sought]") {
    // 24 N·m of effort, less 4 kg × 10 × 0.1 m = 4 N·m on the stone's side; the lever's 2 kg hang
    // 0.3 m right of the axis: 6 N·m more. 26 N·m ÷ 0.2 m = 130 N.
    Lever lever = known_push();
    lever.loads.push_back({"second", Weight{0.1, 4.0}});
    lever.own_weight = {2.0, std::nullopt};
    CHECK_THAT(solved(lever).load_found.value(), WithinRel(130.0, kRounding));
}

TEST_CASE("a pull or a torque can be what is sought", "[lever][sought]") {
    Lever lever = known_push();
    // Up at the right end beyond the effort turns against it: 24 N·m ÷ 0.8 m.
    lever.loads = {{"rope", PointForce{1.0, 0.0, kUp_rad}}};
    CHECK_THAT(solved(lever).load_found.value(), WithinRel(30.0, kRounding));
    lever.loads = {{"hinge", Couple{0.0}}};
    CHECK_THAT(solved(lever).load_found.value(), WithinRel(24.0, kRounding));
    fill_in_found_load(solved(lever), lever);
    CHECK_THAT(std::get<Couple>(lever.loads[0].action).torque_Nm, WithinRel(24.0, kRounding));
}

TEST_CASE("a sought load whose line passes through the axis balances nothing", "[lever][sought]") {
    Lever lever = known_push();
    lever.loads[0].action = Weight{0.2, 5.0};
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::load_through_axis);
    CHECK_FALSE(result.load_found.has_value());
    CHECK(result.loads[0].force_N.norm() == 0.0);
    CHECK_THAT(result.torque_effort_Nm, WithinRel(-24.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(30.0, kRounding));
}

TEST_CASE("a known effort through the axis is said to turn nothing", "[lever][sought]") {
    Lever lever = known_push();
    lever.effort.direction_rad = 0.0;
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::effort_through_axis);
    CHECK_FALSE(result.load_found.has_value());
    CHECK_THAT(result.axis_reaction_N.x(), WithinRel(-30.0, kRounding));
}

TEST_CASE("a sought load that would help is negative, and weighs nothing", "[lever][sought]") {
    Lever lever = known_push();
    lever.effort.direction_rad = kUp_rad;
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::load_reversed);
    CHECK_THAT(result.load_found.value(), WithinRel(-120.0, kRounding));
    CHECK_THAT(result.loads[0].force_N.y(), WithinRel(120.0, kRounding));
    fill_in_found_load(result, lever);
    CHECK(std::get<Weight>(lever.loads[0].action).mass_kg == 0.0);
}

TEST_CASE("against a stiff axle a known effort moves the load that it is the effort of",
          "[lever][sought][friction]") {
    // The law: solved the other way round, the load found asks for the effort that was known.
    Lever lever = known_push();
    lever.friction = {0.3, 0.02};
    const LeverResult found = solved(lever);
    REQUIRE(found.load_found.has_value());
    CHECK(*found.load_found < 120.0);
    fill_in_found_load(found, lever);
    lever.sought = SoughtEffort{};
    CHECK_THAT(solved(lever).effort_N.value(), WithinRel(30.0, 1e-9));
}

TEST_CASE("a torque that is sought gives the axle its part", "[lever][sought][friction]") {
    // The reaction is the effort's 30 N: 24 N·m − 0.5 × 0.1 m × 30 N = 22.5 N·m.
    Lever lever = known_push();
    lever.friction = {0.5, 0.1};
    lever.loads = {{"hinge", Couple{0.0}}};
    CHECK_THAT(solved(lever).load_found.value(), WithinRel(22.5, kRounding));
    lever.friction.radius_m = 5.0;
    CHECK(solved(lever).status == LeverStatus::friction_locks);
}

TEST_CASE("what a known effort balances asks for that effort again", "[lever][sought]") {
    RandomNumbers random(18);
    int tried = 0;
    for (int i = 0; i < 2000; ++i) {
        Lever lever = random_lever(random, {});
        if (lever.loads.empty())
            continue;
        lever.sought = SoughtLoad{static_cast<std::size_t>(i) % lever.loads.size(), 75.0};
        const LeverResult found = solved(lever);
        if (!found.load_found || found.status == LeverStatus::load_reversed ||
            std::abs(*found.load_found) > 1e6)
            continue;
        ++tried;
        fill_in_found_load(found, lever);
        lever.sought = SoughtEffort{};
        const LeverResult again = solved(lever);
        INFO(i);
        // The torques that balance may be far larger than what is left for the effort.
        CHECK_THAT(
            again.effort_N.value(),
            WithinAbs(75.0, 1e-9 * (1.0 + std::abs(again.torque_load_Nm)) / again.effort_arm_m));
    }
    CHECK(tried > 300);
}

TEST_CASE("a sought load needs a load, and a mass needs gravity", "[lever][sought]") {
    Lever lever = known_push();
    lever.gravity_m_s2 = 0.0;
    CHECK(solve_lever(lever).error().key == "gravity");
    lever = known_push();
    lever.sought = SoughtLoad{1, 30.0};
    CHECK(solve_lever(lever).error().key == "load");
    lever.sought = SoughtLoad{0, -1.0};
    CHECK(solve_lever(lever).error().key == "effort.force");
}

TEST_CASE("two supports share a beam by their distances", "[lever][sought]") {
    // The plank's 100 N in the middle: 50 N each. 30 kg at 1.5 m, a quarter of the way: 225 and
    // 75 N.
    Lever lever = plank();
    CHECK_THAT(solved(lever).effort_N.value(), WithinRel(50.0, kRounding));
    lever.loads = {{"crate", Weight{1.5, 30.0}}};
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::ok);
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(275.0, kRounding));
    CHECK_THAT(result.effort_N.value(), WithinRel(125.0, kRounding));
    CHECK_FALSE(result.lever_class.has_value());
    CHECK(result.class_reason == ClassReason::two_supports);
    CHECK_FALSE(result.ideal_advantage.has_value());
    CHECK_FALSE(result.actual_advantage.has_value());
}

TEST_CASE("a load beyond a support lifts the beam off the other", "[lever][sought]") {
    // 12 kg at 4 m, 1 m beyond the right trestle: 120 N·m against the plank's 100 N × 1 m.
    Lever lever = plank();
    lever.loads = {{"crate", Weight{4.0, 12.0}}};
    const LeverResult left = solved(lever);
    CHECK(left.status == LeverStatus::first_support_lifts);
    CHECK_THAT(left.axis_reaction_N.y(), WithinRel(-10.0, 1e-11));
    CHECK_THAT(left.effort_N.value(), WithinRel(230.0, kRounding));
    lever.loads[0].action = Weight{4.0, 10.0}; // just balanced: it touches, and bears nothing
    CHECK(solved(lever).status == LeverStatus::ok);
    lever.loads[0].action = Weight{0.0, 12.0};
    CHECK(solved(lever).status == LeverStatus::second_support_lifts);
}

TEST_CASE("the first support also holds a beam against a slanting pull", "[lever][sought]") {
    Lever lever = plank();
    lever.own_weight.mass_kg = 0.0;
    lever.loads = {{"rope", PointForce{2.0, 100.0, -kPi / 6.0}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.axis_reaction_N.x(), WithinRel(-100.0 * std::cos(kPi / 6.0), kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(25.0, 1e-11));
    CHECK_THAT(result.effort_N.value(), WithinRel(25.0, 1e-11));
}

TEST_CASE("supports at one place do not say how they share", "[lever][sought]") {
    Lever lever = plank();
    lever.effort.at_m = 1.0;
    CHECK(solved(lever).status == LeverStatus::supports_at_one_place);
    CHECK_FALSE(solved(lever).effort_N.has_value());
}

TEST_CASE("a support pushes up, and turns on no axle", "[lever][sought]") {
    Lever lever = plank();
    lever.effort.direction_rad = 0.3;
    CHECK(solve_lever(lever).error().key == "effort.direction");
    lever = plank();
    lever.friction = {0.2, 0.01};
    CHECK(solve_lever(lever).error().key == "friction");
}
