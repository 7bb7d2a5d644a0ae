#include "catch.h"
#include "mechanics/lever/lever_solve.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// Hand-worked values are short decimals; what separates them from the computed ones is rounding
/// in the last of about 16 digits, over a few operations.
constexpr double kRounding = 1e-12;

/// A weightless straight lever of 1 m from (0, 0) to the right, gravity 10 m/s² so that hand
/// calculation stays readable.
Lever straight_lever() {
    Lever lever;
    lever.gravity_m_s2 = 10.0;
    return lever;
}

LeverResult solved(const Lever& lever) {
    const auto result = solve_lever(lever);
    REQUIRE(result.has_value());
    return *result;
}

} // namespace

TEST_CASE(
    "the lever that nobody changed is a seesaw: equal arms, the load's own weight as effort") {
    // 10 kg at standard gravity.
    const LeverResult result = solved(Lever{});
    CHECK(result.lever_class == LeverClass::first);
    CHECK_THAT(result.effort_N.value(), WithinRel(98.0665, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(196.133, kRounding));
}

TEST_CASE("a first-class lever trades force for distance") {
    // Load 12 kg · 10 m/s² = 120 N, 0.2 m left of the axis: 24 N·m, so 0.8 m away 30 N balance it;
    // the axis carries 150 N.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.2;
    lever.loads = {{"stone", Weight{0.0, 12.0}}};
    const LeverResult result = solved(lever);

    CHECK(result.status == LeverStatus::ok);
    CHECK(result.lever_class == LeverClass::first);
    CHECK(result.class_reason == ClassReason::axis_between);
    CHECK_FALSE(result.advantage_contradicts_class);
    CHECK_THAT(result.effort_N.value(), WithinRel(30.0, kRounding));
    CHECK_THAT(result.effort_holding_N.value(), WithinRel(30.0, kRounding));
    CHECK_THAT(result.torque_load_Nm, WithinRel(24.0, kRounding));
    CHECK_THAT(result.torque_effort_Nm, WithinRel(-24.0, kRounding));
    CHECK_THAT(result.effort_arm_m, WithinRel(0.8, kRounding));
    CHECK_THAT(result.load_arm_m.value(), WithinRel(0.2, kRounding));
    CHECK_THAT(result.ideal_advantage.value(), WithinRel(4.0, kRounding));
    CHECK_THAT(result.actual_advantage.value(), WithinRel(4.0, kRounding));
    CHECK_THAT(result.efficiency.value(), WithinRel(1.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.x(), WithinAbs(0.0, 150.0 * kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(150.0, kRounding));
    CHECK_THAT(travel_ratio(result, 0).value(), WithinRel(4.0, kRounding));
}

TEST_CASE("a second-class lever carries the load between axis and effort") {
    // 20 kg at 0.25 m from the axis at the left end: 50 N·m, lifted at 1 m by 50 N upward;
    // the axis carries the other 150 N.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.0;
    lever.loads = {{"sand", Weight{0.25, 20.0}}};
    lever.effort = {"hands", 1.0, kUp_rad};
    const LeverResult result = solved(lever);

    CHECK(result.lever_class == LeverClass::second);
    CHECK(result.class_reason == ClassReason::load_between);
    CHECK_THAT(result.effort_N.value(), WithinRel(50.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(150.0, kRounding));
    CHECK_THAT(result.ideal_advantage.value(), WithinRel(4.0, kRounding));
}

TEST_CASE("a third-class lever pays force for distance") {
    // 3 kg at 1 m: 30 N·m; pulled up at 0.1 m by 300 N; the axis pushes down with 270 N.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.0;
    lever.loads = {{"fish", Weight{1.0, 3.0}}};
    lever.effort = {"hand", 0.1, kUp_rad};
    const LeverResult result = solved(lever);

    CHECK(result.lever_class == LeverClass::third);
    CHECK(result.class_reason == ClassReason::effort_between);
    CHECK_THAT(result.effort_N.value(), WithinRel(300.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(-270.0, kRounding));
    CHECK_THAT(result.ideal_advantage.value(), WithinRel(0.1, kRounding));
    CHECK_THAT(travel_ratio(result, 0).value(), WithinRel(0.1, kRounding));
}

TEST_CASE("an oblique effort has the arm of its line of action, not of its point") {
    // Pulled at 30° to the lever, 1 m away: arm 1 m · sin 30° = 0.5 m. Load 10 N · 1 m = 10 N·m on
    // the other side, so 20 N; the axis takes their sum: x: 20 cos 30°, y: 10 + 20 sin 30°.
    Lever lever = straight_lever();
    lever.path_m = {{-1.0, 0.0}, {1.0, 0.0}};
    lever.axis_at_m = 1.0;
    lever.loads = {{"load", Weight{0.0, 1.0}}};
    lever.effort = {"rope", 2.0, -30.0 * kDegree_rad};
    const LeverResult result = solved(lever);

    CHECK_THAT(result.effort_arm_m, WithinRel(0.5, kRounding));
    CHECK_THAT(result.effort_N.value(), WithinRel(20.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.x(), WithinRel(-20.0 * std::sqrt(0.75), kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(20.0, kRounding));
    // The foot lies on the line through (1, 0) at -30°, 0.5 m from the axis: (0.25, 0.433...).
    CHECK_THAT(result.effort.foot_m.x(), WithinRel(0.25, kRounding));
    CHECK_THAT(result.effort.foot_m.y(), WithinRel(std::sqrt(3.0) / 4.0, kRounding));
}

TEST_CASE("a bent lever is classed by distance along it and solved by its lines of action") {
    // An L: 0.3 m up from the load, then 0.4 m to the right; axis in the corner. A horizontal load
    // of 40 N at the foot has arm 0.3 m: it pulls left, 40 · 0.3 = 12 N·m clockwise. The effort at
    // the right end, straight up, has arm 0.4 m: 30 N.
    Lever lever = straight_lever();
    lever.path_m = {{0.0, 0.0}, {0.0, 0.3}, {0.4, 0.3}};
    lever.axis_at_m = 0.3;
    lever.loads = {{"nail", PointForce{0.0, 40.0, kPi}}};
    lever.effort = {"hand", 0.7, kUp_rad};
    const LeverResult result = solved(lever);

    CHECK(result.lever_class == LeverClass::first);
    CHECK_THAT(result.torque_load_Nm, WithinRel(-12.0, kRounding));
    CHECK_THAT(result.effort_N.value(), WithinRel(30.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.x(), WithinRel(40.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(-30.0, kRounding));
}

TEST_CASE("own weight acts at the middle of a uniform lever and counts in the actual advantage") {
    // Axis at 0.25 m. Load 8 kg at 0: 80 · 0.25 = 20 N·m one way. The lever's 2 kg act at 0.5 m:
    // 20 · 0.25 = 5 N·m the other way. Left over 15 N·m, at 0.75 m 20 N.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.25;
    lever.loads = {{"load", Weight{0.0, 8.0}}};
    lever.own_weight.mass_kg = 2.0;
    const LeverResult result = solved(lever);

    CHECK_THAT(result.torque_load_Nm, WithinRel(15.0, kRounding));
    CHECK_THAT(result.own_weight.torque_Nm, WithinRel(-5.0, kRounding));
    CHECK_THAT(result.effort_N.value(), WithinRel(20.0, kRounding));
    CHECK_THAT(result.ideal_advantage.value(), WithinRel(3.0, kRounding));
    CHECK_THAT(result.actual_advantage.value(), WithinRel(4.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(120.0, kRounding));

    SECTION("at a stated centre of mass it acts there") {
        // At 0.75 m: 20 · 0.5 = 10 N·m, left over 10 N·m, 13.333 N.
        lever.own_weight.centre_at_m = 0.75;
        CHECK_THAT(solved(lever).effort_N.value(), WithinRel(40.0 / 3.0, kRounding));
    }
}

TEST_CASE("own weight of a uniform bent lever acts at its centroid, which lies off the lever") {
    // An L of 0.6 m down and 0.8 m to the right, 7 kg: 30 N at x = 0 and 40 N at x = 0.4 m, so
    // 16 N·m about the top, where the axis is; held at the right end, arm 0.8 m, by 20 N up. The
    // middle of its length is at x = 0.1 m and would give 8.75 N.
    Lever lever = straight_lever();
    lever.path_m = {{0.0, 0.6}, {0.0, 0.0}, {0.8, 0.0}};
    lever.axis_at_m = 0.0;
    lever.loads.clear();
    lever.own_weight.mass_kg = 7.0;
    lever.effort = {"hand", 1.4, kUp_rad};
    CHECK_THAT(solved(lever).effort_N.value(), WithinRel(20.0, kRounding));
}

TEST_CASE("several loads and a couple add their torques") {
    // About the left end: 10 kg at 0.2 m: -20; 50 N up at 0.6 m: +30; a couple of -25; sum -15 N·m,
    // held at 1 m by 15 N up. The loads sum to 50 N down.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.0;
    lever.loads = {{"bag", Weight{0.2, 10.0}},
                   {"spring", PointForce{0.6, 50.0, kUp_rad}},
                   {"stiff hinge", Couple{-25.0}}};
    lever.effort = {"hand", 1.0, kUp_rad};
    const LeverResult result = solved(lever);

    CHECK_THAT(result.torque_load_Nm, WithinRel(-15.0, kRounding));
    CHECK_THAT(result.effort_N.value(), WithinRel(15.0, kRounding));
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(35.0, kRounding));
    CHECK_THAT(result.load_arm_m.value(), WithinRel(15.0 / 50.0, kRounding));
    REQUIRE(result.loads.size() == 3);
    CHECK(result.loads[2].torque_Nm == -25.0);
    CHECK(result.loads[2].force_N.norm() == 0.0);
    CHECK(result.loads[2].arm_m == 0.0);
    CHECK_FALSE(travel_ratio(result, 2).has_value());
}

TEST_CASE("loads that cancel have no resultant and no arm") {
    // A pair of 30 N, 0.4 m apart, is a couple of 12 N·m: 12 N at 1 m hold it.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.0;
    lever.loads = {{"down", PointForce{0.6, 30.0, kDown_rad}},
                   {"up", PointForce{0.2, 30.0, kUp_rad}}};
    lever.effort = {"hand", 1.0, kUp_rad};
    const LeverResult result = solved(lever);

    CHECK_THAT(result.effort_N.value(), WithinRel(12.0, kRounding));
    CHECK_FALSE(result.load_arm_m.has_value());
    CHECK_FALSE(result.ideal_advantage.has_value());
}

TEST_CASE("an effort through the axis cannot balance anything") {
    Lever lever = straight_lever();
    lever.axis_at_m = 0.5;

    SECTION("because it pulls along the lever") {
        lever.effort = {"hand", 1.0, 0.0};
    }
    SECTION("because it acts at the axis") {
        lever.effort = {"hand", 0.5, kUp_rad};
    }

    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::effort_through_axis);
    CHECK_FALSE(result.effort_N.has_value());
    CHECK_FALSE(result.effort_holding_N.has_value());
    CHECK_FALSE(result.actual_advantage.has_value());
    CHECK_FALSE(result.efficiency.has_value());
    CHECK(result.torque_effort_Nm == 0.0);
    CHECK(result.effort.force_N.norm() == 0.0);
    // The support carries the load alone: 10 kg · 10 m/s².
    CHECK_THAT(result.axis_reaction_N.y(), WithinRel(100.0, kRounding));
    CHECK_THAT(result.effort_arm_m, WithinAbs(0.0, kSamePlace_m));
}

TEST_CASE("an effort the wrong way round is found negative") {
    // The load turns the lever counter-clockwise, and so would an upward effort on the right side.
    Lever lever = straight_lever();
    lever.effort = {"hand", 1.0, kUp_rad};
    const LeverResult result = solved(lever);

    CHECK(result.status == LeverStatus::effort_reversed);
    CHECK_THAT(result.effort_N.value(), WithinRel(-100.0, kRounding));
    // It stands in the result as it must act: down.
    CHECK_THAT(result.effort.force_N.y(), WithinRel(-100.0, kRounding));
    CHECK_THAT(result.actual_advantage.value(), WithinRel(1.0, kRounding));
}

TEST_CASE("coincident points leave a lever without a class but with a solution") {
    Lever lever = straight_lever();

    SECTION("load at the effort: the effort carries it alone, 10 kg · 10 m/s²") {
        lever.axis_at_m = 0.0;
        lever.loads = {{"load", Weight{1.0, 10.0}}};
        lever.effort = {"hand", 1.0, kUp_rad};
        const LeverResult result = solved(lever);
        CHECK(result.status == LeverStatus::coincident_points);
        CHECK(result.class_reason == ClassReason::effort_at_load);
        CHECK_FALSE(result.lever_class.has_value());
        CHECK_THAT(result.effort_N.value(), WithinRel(100.0, kRounding));
        CHECK_THAT(result.ideal_advantage.value(), WithinRel(1.0, kRounding));
        CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(0.0, 100.0 * kRounding));
    }
    SECTION("load at the axis: nothing to balance, and no advantage to speak of") {
        lever.loads = {{"load", Weight{0.5, 10.0}}};
        const LeverResult result = solved(lever);
        CHECK(result.status == LeverStatus::coincident_points);
        CHECK(result.class_reason == ClassReason::load_at_axis);
        CHECK(result.effort_N == 0.0);
        CHECK_FALSE(result.ideal_advantage.has_value());
        CHECK_FALSE(result.actual_advantage.has_value());
        CHECK_THAT(result.axis_reaction_N.y(), WithinRel(100.0, kRounding));
    }
}

TEST_CASE("an effort of nothing is zero, never minus zero") {
    Lever lever = straight_lever();
    lever.loads = {{"load", Weight{0.5, 10.0}}};
    for (const double at_m : {0.0, 1.0})
        for (const double direction_rad : {kUp_rad, kDown_rad}) {
            lever.effort = {"hand", at_m, direction_rad};
            const double effort_N = solved(lever).effort_N.value();
            CHECK(effort_N == 0.0);
            CHECK_FALSE(std::signbit(effort_N));
        }
}

TEST_CASE("an oblique pull can turn the usual meaning of a class round") {
    Lever lever = straight_lever();
    lever.axis_at_m = 0.0;

    SECTION("a second class that pays force") {
        // Effort at 1 m, 10° off the lever: arm 0.1736 m, less than the load's 0.5 m.
        lever.loads = {{"load", Weight{0.5, 10.0}}};
        lever.effort = {"rope", 1.0, 170.0 * kDegree_rad};
        const LeverResult result = solved(lever);
        CHECK(result.lever_class == LeverClass::second);
        CHECK(result.advantage_contradicts_class);
        CHECK_THAT(result.ideal_advantage.value(),
                   WithinRel(2.0 * std::sin(10.0 * kDegree_rad), kRounding));
    }
    SECTION("a third class that wins force") {
        // Load at 1 m pulls 10° off the lever: arm 0.1736 m; effort at 0.5 m straight up.
        lever.loads = {{"rope", PointForce{1.0, 100.0, -10.0 * kDegree_rad}}};
        lever.effort = {"hand", 0.5, kUp_rad};
        const LeverResult result = solved(lever);
        CHECK(result.lever_class == LeverClass::third);
        CHECK(result.advantage_contradicts_class);
        CHECK_THAT(result.ideal_advantage.value(),
                   WithinRel(0.5 / std::sin(10.0 * kDegree_rad), kRounding));
    }
    SECTION("equal arms contradict nothing") {
        // Effort at 1 m, 30° off the lever: arm 0.5 m, like the load's.
        lever.loads = {{"load", Weight{0.5, 10.0}}};
        lever.effort = {"rope", 1.0, 150.0 * kDegree_rad};
        CHECK_FALSE(solved(lever).advantage_contradicts_class);
    }
}

TEST_CASE("without gravity weights weigh nothing") {
    Lever lever = straight_lever();
    lever.gravity_m_s2 = 0.0;
    const LeverResult result = solved(lever);
    CHECK(result.effort_N == 0.0);
    CHECK(result.axis_reaction_N.norm() == 0.0);
    CHECK_FALSE(result.load_arm_m.has_value());
}

TEST_CASE("a lever without loads needs no effort") {
    Lever lever = straight_lever();
    lever.loads.clear();
    const LeverResult result = solved(lever);
    CHECK(result.effort_N == 0.0);
    CHECK(result.class_reason == ClassReason::no_placed_load);
    CHECK_FALSE(result.lever_class.has_value());
    CHECK_FALSE(result.actual_advantage.has_value());
}

TEST_CASE("a hand that pulls too little or too much leaves a torque over") {
    // As in the first test: 24 N·m of load, effort arm 0.8 m; 30 N balance.
    Lever lever = straight_lever();
    lever.axis_at_m = 0.2;
    lever.loads = {{"stone", Weight{0.0, 12.0}}};
    const LeverResult result = solved(lever);

    const HandBalance weak = balance_by_hand(lever, result, 20.0);
    CHECK_THAT(weak.torque_load_Nm, WithinRel(24.0, kRounding));
    CHECK_THAT(weak.torque_effort_Nm, WithinRel(-16.0, kRounding));
    CHECK_THAT(weak.net_torque_Nm, WithinRel(8.0, kRounding));
    CHECK_THAT(weak.axis_reaction_N.y(), WithinRel(140.0, kRounding));

    CHECK_THAT(balance_by_hand(lever, result, 40.0).net_torque_Nm, WithinRel(-8.0, kRounding));
    CHECK_THAT(balance_by_hand(lever, result, -10.0).net_torque_Nm, WithinRel(32.0, kRounding));
    CHECK_THAT(balance_by_hand(lever, result, 30.0).net_torque_Nm,
               WithinAbs(0.0, 24.0 * kRounding));
}
