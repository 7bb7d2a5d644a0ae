#include "catch.h"
#include "mechanics/lever/lever_solve.h"

using namespace steelyard::mechanics;

// Hand work by the friction circle: the reaction of a dry axle passes its centre at
// coefficient × axle radius, r below, so that each arm grows or shrinks by r.
// Source of the method: friction circle of a journal bearing, any statics text.

namespace {

/// Newton's steps end within a few units of rounding of the root.
constexpr double kRounding = 1e-12;

/// r = 0.25 · 0.04 m = 0.01 m.
constexpr AxisFriction kDryAxle{0.25, 0.04};

LeverResult solved(const Lever& lever) {
    const auto result = solve_lever(lever);
    REQUIRE(result.has_value());
    return *result;
}

/// 120 N at arm 0.2 m against an effort straight down at arm 0.8 m.
Lever dry_first_class() {
    Lever lever;
    lever.axis_at_m = 0.2;
    lever.loads = {{"load", PointForce{0.0, 120.0, kDown_rad}}};
    lever.friction = kDryAxle;
    return lever;
}

} // namespace

TEST_CASE("axle friction makes the load's arm longer and the effort's shorter to move it") {
    const LeverResult result = solved(dry_first_class());
    CHECK(result.status == LeverStatus::ok);
    // (0.2 + 0.01) · 120 / (0.8 - 0.01)
    CHECK_THAT(result.effort_N.value(), WithinRel(25.2 / 0.79, kRounding));
    // (0.2 - 0.01) · 120 / (0.8 + 0.01)
    CHECK_THAT(result.effort_holding_N.value(), WithinRel(22.8 / 0.81, kRounding));
    // Frictionless 30 N.
    CHECK_THAT(result.efficiency.value(), WithinRel(30.0 * 0.79 / 25.2, kRounding));
    CHECK_THAT(result.actual_advantage.value(), WithinRel(120.0 * 0.79 / 25.2, kRounding));
    CHECK_THAT(result.ideal_advantage.value(), WithinRel(4.0, kRounding));
    // r · (120 + 31.9), against the turning: the effort turns the lever clockwise.
    CHECK_THAT(result.torque_friction_Nm, WithinRel(0.01 * (120.0 + 25.2 / 0.79), 1e-10));
}

TEST_CASE("the smallest friction still shows its own few digits") {
    // r = 1e-9 m moves the effort by about 1e-9 · 150 / 0.8 N.
    Lever lever = dry_first_class();
    lever.friction = {1e-7, 1e-2};
    const LeverResult result = solved(lever);
    const double added_N = 120.0 * 0.200000001 / 0.799999999 - 30.0;
    // Both sides are small differences of numbers near 30 N, whose last digit is 4e-15 N.
    CHECK_THAT(*result.effort_N - 30.0, WithinAbs(added_N, 1e-13));
}

TEST_CASE("axle friction lengthens both arms when load and effort pull opposite ways") {
    // Second class: 120 N down at 0.2 m, effort up at 0.8 m, axis at the left end; the reaction is
    // the difference, so E · 0.8 - 120 · 0.2 = 0.01 · (120 - E).
    Lever lever = dry_first_class();
    lever.axis_at_m = 0.0;
    lever.loads = {{"load", PointForce{0.2, 120.0, kDown_rad}}};
    lever.effort = {"hand", 0.8, kUp_rad};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinRel(25.2 / 0.81, kRounding));
    CHECK_THAT(result.effort_holding_N.value(), WithinRel(22.8 / 0.79, kRounding));
}

TEST_CASE("axle friction goes with the reaction, which adds as a vector") {
    // 40 N down at 0.2 m and 30 N sideways make a reaction of 50 N (3-4-5), friction 0.5 N·m:
    // 30 N balance at an arm of (40 · 0.2 + 0.5) / 30.
    const double arm_m = 8.5 / 30.0;
    Lever lever;
    lever.path_m = {{-0.2, 0.0}, {0.0, 0.0}, {0.0, arm_m}};
    lever.axis_at_m = 0.2;
    lever.loads = {{"load", PointForce{0.0, 40.0, kDown_rad}}};
    lever.effort = {"hand", 0.2 + arm_m, 0.0};
    lever.friction = kDryAxle;
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinRel(30.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.norm(), WithinRel(50.0, kRounding));
    CHECK_THAT(result.torque_friction_Nm, WithinRel(0.5, 1e-10));
}

TEST_CASE("an effort inside the friction circle locks the lever") {
    // Arm 0.005 m, circle 0.01 m: every newton of effort makes more friction than torque.
    Lever lever = dry_first_class();
    lever.effort.at_m = 0.205;
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::friction_locks);
    CHECK_FALSE(result.effort_N.has_value());
    CHECK_FALSE(result.actual_advantage.has_value());
    CHECK_FALSE(result.efficiency.has_value());
    // It can still be held: (0.2 - 0.01) · 120 / (0.005 + 0.01).
    CHECK_THAT(result.effort_holding_N.value(), WithinRel(22.8 / 0.015, kRounding));
}

TEST_CASE("a load inside the friction circle stays where it is without a hand") {
    // Load arm 0.005 m: to let it go down the hand must even push the other way.
    Lever lever = dry_first_class();
    lever.path_m = {{0.0, 0.0}, {1.0, 0.0}};
    lever.loads = {{"load", PointForce{0.195, 120.0, kDown_rad}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinRel(120.0 * 0.015 / 0.79, kRounding));
    CHECK_THAT(result.effort_holding_N.value(), WithinRel(-120.0 * 0.005 / 0.81, kRounding));
    CHECK(balance_by_hand(lever, result, 0.0).net_torque_Nm == 0.0);
}

TEST_CASE("a load on a dry axle takes effort to turn although it has no torque") {
    // E · 0.8 = 0.01 · (120 + E)
    Lever lever = dry_first_class();
    lever.loads = {{"load", PointForce{0.2, 120.0, kDown_rad}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinRel(1.2 / 0.79, kRounding));
    // Turning a load that moves nowhere does no useful work.
    CHECK_THAT(result.efficiency.value(), WithinAbs(0.0, kRounding));
}

TEST_CASE("between holding and moving a dry axle keeps the lever still") {
    const Lever lever = dry_first_class();
    const LeverResult result = solved(lever);
    CHECK(balance_by_hand(lever, result, 30.0).net_torque_Nm == 0.0);
    CHECK(balance_by_hand(lever, result, 28.2).net_torque_Nm == 0.0);
    CHECK(balance_by_hand(lever, result, 31.8).net_torque_Nm == 0.0);
    // Just outside (28.148 N and 31.899 N) the load, or the hand, wins.
    CHECK(balance_by_hand(lever, result, 28.1).net_torque_Nm > 0.0);
    CHECK(balance_by_hand(lever, result, 31.9).net_torque_Nm < 0.0);
}
