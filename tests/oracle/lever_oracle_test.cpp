// Levers against the worked examples and answers of open textbooks:
//   College Physics 2e (OpenStax), chapter 9, which computes with g = 9.80 m/s²;
//   University Physics, volume 1 (OpenStax), chapter 12, g = 9.8 m/s²;
//   Physics (OpenStax, high school), simple machines.
// Each first check is against what the book prints, within half a unit of its last printed digit.
// A second one, "in full", is our own arithmetic from the book's inputs, within half a unit of the
// last digit written here: it notices errors that the book's rounding would hide.

#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

constexpr double kBookGravity = 9.80;

/// A weightless straight lever along +x, its axis at the left end, in the books' gravity.
Lever level_lever(double length_m) {
    Lever lever;
    lever.path_m = {{0.0, 0.0}, {length_m, 0.0}};
    lever.axis_at_m = 0.0;
    lever.loads.clear();
    lever.effort = {"effort", length_m, kUp_rad};
    lever.gravity_m_s2 = kBookGravity;
    return lever;
}

LeverResult solved(const Lever& lever) {
    const auto result = solve_lever(lever);
    REQUIRE(result.has_value());
    return *result;
}

/// Forearm at an angle below the horizontal [rad], held by a muscle.
Lever forearm(double below_rad, double muscle_at_m, double muscle_direction_rad) {
    Lever lever = level_lever(0.5);
    lever.path_m[1] = unit_vector(-below_rad) * 0.5;
    lever.effort = {"biceps", muscle_at_m, muscle_direction_rad};
    return lever;
}

} // namespace

TEST_CASE("College Physics 2e, example 9.1: two children on a seesaw") {
    // 26.0 kg at 1.60 m; where must 32.0 kg sit, and what does the pivot carry?
    Lever lever = level_lever(4.0);
    lever.axis_at_m = 2.0;
    lever.loads = {{"child", Weight{0.4, 26.0}}};
    lever.effort = {"other child", 3.3, kDown_rad};
    const LeverResult result = solved(lever);
    const double other_N = 32.0 * kBookGravity;
    CHECK_THAT(result.torque_load_Nm / other_N, WithinAbs(1.30, 0.005));
    CHECK_THAT(result.torque_load_Nm / other_N, WithinAbs(1.3000, 0.00005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(568.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(568.40, 0.005));
    CHECK(result.lever_class == LeverClass::first);
}

TEST_CASE("College Physics 2e, example 9.2: a pole in two hands") {
    Lever lever = level_lever(0.9);
    lever.loads = {{"pole", Weight{0.6, 5.00}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinAbs(32.7, 0.05));
    CHECK_THAT(result.effort_N.value(), WithinAbs(32.667, 0.0005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(16.3, 0.05));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(16.333, 0.0005));
}

TEST_CASE("College Physics 2e, example 9.2, as what it is: a pole on two supports") {
    Lever lever = level_lever(0.9);
    lever.loads = {{"pole", Weight{0.6, 5.00}}};
    lever.sought = SoughtReactions{"left hand"};
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::ok);
    CHECK_THAT(result.effort_N.value(), WithinAbs(32.667, 0.0005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(16.333, 0.0005));
}

TEST_CASE("College Physics 2e, problem 9.9: a plank held at its end and half a metre on") {
    // 20.0 kg, 2.00 m. The book prints no answer: 196 N down at the end, 392 N up, our arithmetic.
    Lever lever = level_lever(2.0);
    lever.own_weight = {20.0, std::nullopt};
    lever.effort = {"near hand", 0.5, kUp_rad};
    lever.sought = SoughtReactions{"end hand"};
    const LeverResult result = solved(lever);
    CHECK(result.status == LeverStatus::first_support_lifts); // that hand must hold down
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-196.0, 0.005));
    CHECK_THAT(result.effort_N.value(), WithinAbs(392.0, 0.005));
}

TEST_CASE("College Physics 2e, problem 9.37: a push-up between toes and hands") {
    // 50.0 kg, its centre 0.90 m and the hands 1.50 m from the toes: 147 N on each hand.
    Lever lever = level_lever(1.5);
    lever.loads = {{"body", Weight{0.9, 50.0}}};
    lever.sought = SoughtReactions{"toes"};
    const LeverResult result = solved(lever);
    CHECK_THAT(0.5 * result.effort_N.value(), WithinAbs(147.0, 0.5));
    CHECK_THAT(0.5 * result.effort_N.value(), WithinAbs(147.00, 0.005));
    CHECK(result.class_reason == ClassReason::two_supports);
}

TEST_CASE("University Physics, example 12.3: the third mass on a metre stick is sought") {
    // 50.0 g at 70 cm and 75.0 g at 40 cm from the support on one side, the 150.0 g stick's centre
    // at 20 cm there too; a mass at 30 cm on the other side: 316.7 g, and 5.8 N at the support.
    Lever lever = level_lever(1.0);
    lever.gravity_m_s2 = 9.8;
    lever.axis_at_m = 0.7;
    lever.own_weight = {0.150, std::nullopt};
    lever.effort = {"m1", 0.0, kDown_rad};
    lever.loads = {{"m2", Weight{0.3, 0.075}}, {"m3", Weight{1.0, 0.0}}};
    lever.sought = SoughtLoad{1, 0.050 * 9.8};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.load_found.value() / 9.8, WithinAbs(0.3167, 0.00005));
    CHECK_THAT(result.load_found.value() / 9.8, WithinAbs(0.316667, 0.0000005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(5.8, 0.05));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(5.798, 0.0005));
}

TEST_CASE("College Physics 2e, example 9.1, asked for the second child") {
    // The heavier child's weight is known; how heavy must one be at the other end's 1.60 m? 26.0
    // kg.
    Lever lever = level_lever(4.0);
    lever.axis_at_m = 2.0;
    lever.effort = {"heavier child", 3.3, kDown_rad};
    lever.loads = {{"child", Weight{0.4, 0.0}}};
    lever.sought = SoughtLoad{0, 32.0 * kBookGravity};
    CHECK_THAT(solved(lever).load_found.value() / kBookGravity, WithinAbs(26.0, 0.05));
}

TEST_CASE("College Physics 2e, problem 9.19: what a nail puller gives for a known hand") {
    // Hand 45 cm, nail 1.8 cm from the pivot; 50 N become 1250 N.
    Lever lever = level_lever(0.468);
    lever.axis_at_m = 0.018;
    lever.effort = {"hand", 0.468, kDown_rad};
    lever.loads = {{"nail", PointForce{0.0, 0.0, kDown_rad}}};
    lever.sought = SoughtLoad{0, 50.0};
    CHECK_THAT(solved(lever).load_found.value(), WithinAbs(1250.0, 0.05));
}

TEST_CASE("College Physics 2e, example 9.3: a wheelbarrow") {
    Lever lever = level_lever(1.02);
    lever.loads = {{"barrow", Weight{0.075, 45.0}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinAbs(32.4, 0.05));
    CHECK_THAT(result.effort_N.value(), WithinAbs(32.426, 0.0005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(409.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(408.574, 0.0005));
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(13.6, 0.05));
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(13.600, 0.0005));
    CHECK(result.lever_class == LeverClass::second);
}

TEST_CASE("College Physics 2e, example 9.4 and problem 9.26: biceps and elbow") {
    Lever lever = forearm(0.0, 0.040, kUp_rad);
    lever.loads = {{"forearm", Weight{0.160, 2.50}}, {"ball", Weight{0.380, 4.00}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinAbs(470.0, 0.5));
    CHECK_THAT(result.effort_N.value(), WithinAbs(470.40, 0.005));
    // The upper arm pushes the forearm down: problem 9.26.
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-407.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-406.70, 0.005));
    // Ratios to the total weight, 63.7 N.
    CHECK_THAT(1.0 / result.actual_advantage.value(), WithinAbs(7.38, 0.005));
    CHECK_THAT(1.0 / result.actual_advantage.value(), WithinAbs(7.3846, 0.00005));
    CHECK_THAT(-result.axis_reaction_N.y() / 63.7, WithinAbs(6.38, 0.005));
    CHECK(result.lever_class == LeverClass::third);

    SECTION("the forearm as the lever's own weight is the same balance") {
        lever.loads.erase(lever.loads.begin());
        lever.own_weight = {2.50, 0.160};
        CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(470.40, 0.005));
    }
    SECTION("with standard gravity, in full") {
        lever.gravity_m_s2 = kStandardGravity;
        CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(470.719, 0.0005));
        CHECK_THAT(solved(lever).axis_reaction_N.y(), WithinAbs(-406.976, 0.0005));
    }
}

TEST_CASE("College Physics 2e, example 9.5: lifting with the back bent") {
    // The trunk along +x from the hip; the muscle pulls back and 29.0° down along a line that
    // passes 8.00 cm above the hip: its point is 0.35 m out, where the line is at that height.
    const double fall_rad = 29.0 * kDegree_rad;
    const double height_m = (0.0800 + 0.35 * std::sin(fall_rad)) / std::cos(fall_rad);
    Lever lever = level_lever(0.5);
    lever.path_m = {{0.0, 0.0}, {0.35, 0.0}, {0.5, 0.0}, {0.35, height_m}};
    lever.loads = {{"upper body", Weight{0.350, 55.0}}, {"box", Weight{0.500, 30.0}}};
    lever.effort = {"back muscle", path_length(lever.path_m), kPi + fall_rad};
    const LeverResult result = solved(lever);

    CHECK_THAT(result.effort_arm_m, WithinAbs(0.0800, 1e-12));
    CHECK_THAT(result.effort_N.value(), WithinAbs(4.20e3, 5.0));
    CHECK_THAT(result.effort_N.value(), WithinAbs(4195.625, 0.0005));
    CHECK_THAT(1.0 / result.actual_advantage.value(), WithinAbs(5.04, 0.005));
    CHECK_THAT(1.0 / result.actual_advantage.value(), WithinAbs(5.0368, 0.00005));
    CHECK_THAT(result.axis_reaction_N.x(), WithinAbs(3.67e3, 5.0));
    CHECK_THAT(result.axis_reaction_N.x(), WithinAbs(3669.58, 0.005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(2.87e3, 5.0));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(2867.08, 0.005));
    CHECK_THAT(result.axis_reaction_N.norm(), WithinAbs(4.66e3, 5.0));
    CHECK_THAT(result.axis_reaction_N.norm(), WithinAbs(4656.82, 0.005));
    const double rise_deg =
        std::atan2(result.axis_reaction_N.y(), result.axis_reaction_N.x()) / kDegree_rad;
    CHECK_THAT(rise_deg, WithinAbs(38.0, 0.05));
    CHECK_THAT(rise_deg, WithinAbs(38.001, 0.0005));
    CHECK_THAT(result.axis_reaction_N.norm() / 833.0, WithinAbs(5.59, 0.005));
}

TEST_CASE("College Physics 2e, section 9.5: the axle of a car turns its wheel") {
    // 1000 N at the tyre, 24.0 cm out, take 12 000 N at the axle's 2.0 cm.
    Lever lever = level_lever(0.24);
    lever.loads = {{"road", PointForce{0.24, 1000.0, kDown_rad}}};
    lever.effort.at_m = 0.020;
    const LeverResult result = solved(lever);
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(0.083, 0.0005));
    CHECK_THAT(result.effort_N.value(), WithinAbs(12000.0, 0.5));
}

TEST_CASE("College Physics 2e, problems 9.1 and 9.2: torque of a perpendicular push") {
    CHECK_THAT(torque_about({0.0, 0.0}, {{0.850, 0.0}, {0.0, 55.0}}), WithinAbs(46.8, 0.05));
    CHECK_THAT(torque_about({0.0, 0.0}, {{0.850, 0.0}, {0.0, 55.0}}), WithinAbs(46.75, 0.005));
    // 9.2 has no printed answer: our own arithmetic.
    CHECK_THAT(torque_about({0.0, 0.0}, {{0.140, 0.0}, {0.0, 165.0}}), WithinAbs(23.1, 0.005));
}

TEST_CASE("College Physics 2e, problem 9.3: two push a door from both sides") {
    Lever lever = level_lever(0.6);
    lever.loads = {{"child", PointForce{0.600, 17.5, kDown_rad}}};
    lever.effort.at_m = 0.450;
    CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(23.3, 0.05));
    CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(23.333, 0.0005));
}

TEST_CASE("College Physics 2e, problem 9.5: the seesaw of example 9.1 with a board that weighs") {
    Lever lever = level_lever(4.0);
    lever.axis_at_m = 2.0;
    lever.loads = {{"child", Weight{0.4, 26.0}}};
    lever.own_weight = {12.0, 2.0 - 0.160};
    lever.effort = {"other child", 2.0 + 1.36, kDown_rad};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.torque_load_Nm / (32.0 * kBookGravity), WithinAbs(1.36, 0.005));
    CHECK_THAT(result.torque_load_Nm / (32.0 * kBookGravity), WithinAbs(1.3600, 0.00005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(686.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(686.00, 0.005));
}

TEST_CASE("College Physics 2e, problems 9.19 and 9.23: a nail puller") {
    Lever lever = level_lever(0.468);
    lever.axis_at_m = 0.018;
    lever.loads = {{"nail", PointForce{0.0, 1250.0, kDown_rad}}};
    lever.effort = {"hand", 0.468, kDown_rad};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(25.0, 0.5));
    CHECK_THAT(result.effort_N.value(), WithinAbs(50.0, 0.5));
    CHECK_THAT(result.effort_N.value(), WithinAbs(50.00, 0.005));
    CHECK(result.lever_class == LeverClass::first);

    // 9.23: the puller's 2.10 kg stand on the surface too; their torque is left out there.
    lever.own_weight = {2.10, 0.018};
    CHECK_THAT(solved(lever).axis_reaction_N.y(), WithinAbs(1.3e3, 50.0));
    CHECK_THAT(solved(lever).axis_reaction_N.y(), WithinAbs(1320.58, 0.005));
}

TEST_CASE("College Physics 2e, problem 9.21: another wheelbarrow") {
    Lever lever = level_lever(1.02);
    lever.loads = {{"barrow", Weight{0.055, 55.0}}};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(18.5, 0.05));
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(18.545, 0.0005));
    CHECK_THAT(result.effort_N.value(), WithinAbs(29.1, 0.05));
    CHECK_THAT(result.effort_N.value(), WithinAbs(29.064, 0.0005));
    // The book's force of the wheel on the ground, 510 N down, is our force on the barrow, up.
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(510.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(509.936, 0.0005));
}

TEST_CASE("College Physics 2e, problem 9.31: the forearm 30° below the horizontal") {
    // The muscle stays square to the forearm. The book prints no answer; 407 N stands in a
    // third-party solution, 407.4 N is our own arithmetic.
    const double below_rad = 30.0 * kDegree_rad;
    Lever lever = forearm(below_rad, 0.040, kUp_rad - below_rad);
    lever.loads = {{"forearm", Weight{0.160, 2.50}}, {"ball", Weight{0.380, 4.00}}};
    CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(407.0, 0.5));
    CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(407.4, 0.05));
}

TEST_CASE("College Physics 2e, problem 9.32: the head held up by the neck") {
    Lever lever = level_lever(0.075);
    lever.axis_at_m = 0.05;
    lever.loads = {{"head", PointForce{0.075, 50.0, kDown_rad}}};
    lever.effort = {"neck muscle", 0.0, kDown_rad};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinAbs(25.0, 0.5));
    CHECK_THAT(result.effort_N.value(), WithinAbs(25.0, 1e-9));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(75.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(75.0, 1e-9));
    CHECK(result.lever_class == LeverClass::first);
}

TEST_CASE("College Physics 2e, problem 9.33: standing on the toes of one foot") {
    // The foot from heel (0) over ankle (4.0 cm) to the ball (16 cm).
    Lever lever = level_lever(0.16);

    SECTION("about the ankle: first class, ground force as load") {
        lever.axis_at_m = 0.04;
        lever.loads = {{"ground", PointForce{0.16, 75.0 * kBookGravity, kUp_rad}}};
        lever.effort = {"Achilles tendon", 0.0, kUp_rad};
        const LeverResult result = solved(lever);
        CHECK_THAT(result.effort_N.value(), WithinAbs(2.21e3, 5.0));
        CHECK_THAT(result.effort_N.value(), WithinAbs(2205.0, 0.5));
        CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-2.94e3, 5.0));
        CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-2940.0, 0.5));
        CHECK(result.lever_class == LeverClass::first);
    }
    SECTION("about the ball of the foot: second class, the leg's push as load, same tendon force") {
        lever.axis_at_m = 0.16;
        lever.loads = {{"leg", PointForce{0.04, 2940.0, kDown_rad}}};
        lever.effort = {"Achilles tendon", 0.0, kUp_rad};
        const LeverResult result = solved(lever);
        CHECK_THAT(result.effort_N.value(), WithinAbs(2205.0, 0.5));
        CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(735.0, 0.5));
        CHECK(result.lever_class == LeverClass::second);
    }
}

TEST_CASE("College Physics 2e, problem 9.37: a push-up is one lever behind another") {
    Lever body = level_lever(1.5);
    body.loads = {{"body", Weight{0.90, 50.0}}};
    const double per_hand_N = solved(body).effort_N.value() / 2.0;
    CHECK_THAT(per_hand_N, WithinAbs(147.0, 0.5));
    CHECK_THAT(per_hand_N, WithinAbs(147.00, 0.005));

    // Triceps 1.75 cm behind the elbow, the hand 20.0 cm before it.
    Lever arm = level_lever(0.2175);
    arm.axis_at_m = 0.0175;
    arm.loads = {{"hand", PointForce{0.2175, per_hand_N, kUp_rad}}};
    arm.effort = {"triceps", 0.0, kUp_rad};
    const LeverResult result = solved(arm);
    CHECK_THAT(result.effort_N.value(), WithinAbs(1680.0, 5.0));
    CHECK_THAT(result.effort_N.value(), WithinAbs(1680.0, 0.05));
    CHECK_THAT(result.effort_N.value() / (50.0 * kBookGravity), WithinAbs(3.4, 0.05));
}

TEST_CASE("College Physics 2e, problem 9.39: a seesaw that cannot be balanced") {
    // 18.0 kg would have to sit 2.33 m out on a board that ends at 1.50 m.
    Lever lever = level_lever(3.0);
    lever.axis_at_m = 1.5;
    lever.loads = {{"child", Weight{0.1, 30.0}}};
    lever.effort = {"other child", 3.0, kDown_rad};
    const double place_m = solved(lever).torque_load_Nm / (18.0 * kBookGravity);
    CHECK_THAT(place_m, WithinAbs(2.33, 0.005));
    CHECK_THAT(place_m, WithinAbs(2.3333, 0.00005));
    // Even at the end of the board that child is too light.
    CHECK(solved(lever).effort_N.value() > 18.0 * kBookGravity);

    lever.effort.at_m = 1.5 + place_m;
    const auto refused = solve_lever(lever);
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().fault == Fault::off_lever);
}

TEST_CASE("University Physics 1, example 12.1: where the weight of a car acts") {
    // 52 % of the weight on the front axle puts it 1.3 m ahead of the rear one, wheelbase 2.5 m.
    Lever lever = level_lever(2.5);
    lever.loads = {{"car", PointForce{1.3, 100.0, kDown_rad}}};
    CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(52.0, 0.5));
    CHECK_THAT(solved(lever).effort_N.value(), WithinAbs(52.00, 0.005));
}

TEST_CASE("University Physics 1, example 12.3: masses on a metre stick that weighs") {
    Lever lever = level_lever(1.0);
    lever.axis_at_m = 0.70;
    lever.loads = {{"m1", Weight{0.0, 0.0500}}, {"m2", Weight{0.30, 0.0750}}};
    lever.own_weight.mass_kg = 0.1500;
    lever.effort = {"m3", 1.0, kDown_rad};
    const LeverResult result = solved(lever);
    const double mass_g = 1000.0 * result.effort_N.value() / kBookGravity;
    CHECK_THAT(mass_g, WithinAbs(316.7, 0.05));
    CHECK_THAT(mass_g, WithinAbs(316.667, 0.0005));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(5.8, 0.05));
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(5.798, 0.0005));
}

TEST_CASE("University Physics 1, example 12.4: a vertical biceps pulls alike at every angle") {
    constexpr double kBookPound_N = 4.448;
    for (const double below_deg : {-45.0, 0.0, 30.0, 60.0}) {
        Lever lever = forearm(below_deg * kDegree_rad, 1.5 * kInch_m, kUp_rad);
        lever.loads = {{"weight", PointForce{13.0 * kInch_m, 50.0 * kBookPound_N, kDown_rad}}};
        const LeverResult result = solved(lever);
        const double pull_N = result.effort_N.value();
        const double elbow_N = result.axis_reaction_N.y();
        CHECK_THAT(pull_N / kBookPound_N, WithinAbs(433.3, 0.05));
        CHECK_THAT(pull_N / kBookPound_N, WithinAbs(433.333, 0.0005));
        CHECK_THAT(pull_N, WithinAbs(1927.0, 0.5));
        CHECK_THAT(elbow_N / kBookPound_N, WithinAbs(-383.3, 0.05));
        CHECK_THAT(elbow_N, WithinAbs(-1705.0, 0.5));
    }
}

TEST_CASE("University Physics 1, chapter 12, forearm problem") {
    for (const double below_deg : {0.0, 30.0, 60.0}) {
        Lever lever = forearm(below_deg * kDegree_rad, 0.04, kUp_rad);
        lever.loads = {{"forearm", Weight{0.150, 3.0}}, {"weight", Weight{0.35, 5.0}}};
        const LeverResult result = solved(lever);
        CHECK_THAT(result.effort_N.value(), WithinAbs(539.0, 0.5));
        CHECK_THAT(result.effort_N.value(), WithinAbs(539.0, 0.05));
        CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-461.0, 0.5));
        CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(-460.6, 0.05));
    }
}

TEST_CASE("University Physics 1, chapter 12, seesaw problem: a board of 40 kg balances") {
    Lever lever = level_lever(8.0);
    lever.axis_at_m = 3.0;
    lever.loads = {{"child", Weight{0.0, 80.0}}};
    lever.own_weight.mass_kg = 40.0;
    lever.effort = {"other child", 8.0, kDown_rad};
    CHECK_THAT(solved(lever).effort_N.value() / kBookGravity, WithinAbs(40.0, 0.5));
    CHECK_THAT(solved(lever).effort_N.value() / kBookGravity, WithinAbs(40.0, 1e-9));
}

TEST_CASE("University Physics 1, chapter 12, ladder problem with a horizontal push at the top") {
    Lever lever = level_lever(6.0);
    lever.path_m = {{0.0, 0.0}, {2.0, std::sqrt(32.0)}};
    lever.loads = {{"person", Weight{3.00, 70.0}}, {"ladder", Weight{2.00, 10.0}}};
    lever.effort = {"wall", path_length(lever.path_m), kPi};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.axis_reaction_N.y(), WithinAbs(784.0, 0.5));
    CHECK_THAT(result.axis_reaction_N.x(), WithinAbs(132.8, 0.05));
    CHECK_THAT(result.axis_reaction_N.x(), WithinAbs(132.82, 0.005));
}

TEST_CASE("Physics (high school), simple machines: efficiency of a lever") {
    // 11 N through 0.4 m lift 40 N through 0.1 m: 4.4 J in, 4.0 J out. With arms of 0.4 m and 0.1 m
    // the axle must take 0.4 N·m under 51 N, which is a friction circle of 0.4 / 51 m.
    Lever lever = level_lever(0.5);
    lever.axis_at_m = 0.1;
    lever.loads = {{"load", PointForce{0.0, 40.0, kDown_rad}}};
    lever.effort = {"effort", 0.5, kDown_rad};
    lever.friction = {0.4, 1.0 / 51.0};
    const LeverResult result = solved(lever);
    CHECK_THAT(result.effort_N.value(), WithinAbs(11.0, 0.5));
    CHECK_THAT(100.0 * result.efficiency.value(), WithinAbs(91.0, 0.5));
    CHECK_THAT(100.0 * result.efficiency.value(), WithinAbs(90.909, 0.0005));
    CHECK_THAT(result.ideal_advantage.value(), WithinAbs(4.0, 1e-9));
    CHECK_THAT(result.actual_advantage.value(), WithinAbs(3.6364, 0.00005));
}

TEST_CASE("Archimedes: magnitudes balance at distances in inverse ratio to them") {
    // On the Equilibrium of Planes I, propositions 6 and 7 (Heath 1897, p. 192): commensurable
    // magnitudes, and incommensurable ones such as a square's side and diagonal.
    for (const double ratio : {2.0, 7.0 / 3.0, std::sqrt(2.0), kPi}) {
        Lever lever = level_lever(1.0 + ratio);
        lever.axis_at_m = 1.0;
        lever.loads = {{"greater", PointForce{0.0, ratio, kDown_rad}}};
        lever.effort = {"less", 1.0 + ratio, kDown_rad};
        // Rounding of a handful of operations.
        CHECK_THAT(solved(lever).effort_N.value(), WithinRel(1.0, 1e-14));
    }
}

TEST_CASE("the named examples of each class are of that class") {
    const auto class_of = [](double axis_m, double load_m, double effort_m) {
        Lever lever = level_lever(1.0);
        lever.axis_at_m = axis_m;
        lever.loads = {{"load", Weight{load_m, 1.0}}};
        lever.effort.at_m = effort_m;
        return solved(lever).lever_class;
    };
    // College Physics 2e, section 9.5: nail puller, wheelbarrow, shovel.
    CHECK(class_of(0.1, 0.0, 1.0) == LeverClass::first);
    CHECK(class_of(0.0, 0.3, 1.0) == LeverClass::second);
    CHECK(class_of(0.0, 1.0, 0.4) == LeverClass::third);
    // Behnke, Kinetic Anatomy 3e, figures 1.21 and 1.22: head on the neck; rising on the toes
    // about the ball of the foot. Davis, Body Physics, section 6.2: biceps at the elbow.
    CHECK(class_of(0.6, 0.9, 0.0) == LeverClass::first);
    CHECK(class_of(1.0, 0.25, 0.0) == LeverClass::second);
    CHECK(class_of(0.0, 0.9, 0.1) == LeverClass::third);
}
