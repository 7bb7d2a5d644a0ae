// Muscle and joint forces against the worked examples of two open textbooks, with the gravity that
// each book uses: College Physics 2e (OpenStax), chapter 9, 9.80 m/s²; University Physics volume 1
// (OpenStax), chapter 12, 9.8 m/s². Beside each number stands what the book prints; a tolerance is
// half of its last printed digit, or, where our full-precision arithmetic from the printed inputs
// is compared, half of the last digit written here.

#include "catch.h"
#include "mechanics/muscle/muscle_lever.h"
#include "mechanics/muscle/muscle_solve.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

constexpr double kBookGravity = 9.80;

double deg(double degrees) {
    return degrees * kPi / 180.0;
}

Vec3 at_angle(double degrees) {
    return {std::cos(deg(degrees)), std::sin(deg(degrees)), 0.0};
}

double direction_deg(const Vec3& v) {
    const double angle = std::atan2(v.y(), v.x()) * 180.0 / kPi;
    return angle < 0.0 ? angle + 360.0 : angle;
}

FreeBody book_body(const char* name) {
    FreeBody body;
    body.name = name;
    body.gravity_m_s2 = Vec3(0.0, -kBookGravity, 0.0);
    return body;
}

NamedForce weight(const char* name, double mass_kg, const Vec3& centre_m) {
    return {name, centre_m, Vec3(0.0, -kBookGravity * mass_kg, 0.0)};
}

MuscleSolution solved(const FreeBody& body, const std::vector<Pull>& pulls) {
    const auto solution = solve_muscles(body, pulls, SharingRule::equal_force);
    REQUIRE(solution);
    REQUIRE(solution->outcome == MuscleOutcome::balanced);
    return *solution;
}

/// Example 9.4, forearm pointing at an angle from the horizontal.
FreeBody forearm_at(double slope_deg) {
    FreeBody body = book_body("forearm and book");
    body.along = at_angle(slope_deg);
    body.segments = {{"forearm", 2.50, 0.160 * body.along, Vec3::Zero()}};
    body.loads = {weight("book", 4.00, 0.380 * body.along)};
    return body;
}

Pull biceps_across_forearm(const FreeBody& body) {
    Muscle biceps;
    biceps.name = "biceps";
    const FixedAngleLine across{0.0400 * body.along, deg(90.0), TurnSense::positive};
    const auto pull = pull_at(biceps, 0.0, across, JointAxis{});
    REQUIRE(pull);
    return *pull;
}

} // namespace

// College Physics 2e, Example 9.4: F_B 470 N, F_E 407 N down, ratios 7.38 and 6.38.
TEST_CASE("College Physics 9.4: the biceps pulls 470 N to hold 63.7 N", "[oracle][muscle]") {
    const FreeBody body = forearm_at(0.0);
    const std::vector<Pull> pulls{biceps_across_forearm(body)};
    const MuscleSolution solution = solved(body, pulls);
    CHECK_THAT(solution.muscles[0].tension_N, WithinAbs(470.40, 0.005));
    REQUIRE(solution.joint_reaction_N);
    CHECK_THAT(solution.joint_reaction_N->y(), WithinAbs(-406.70, 0.005)); // down
    CHECK_THAT(solution.joint_reaction_N->x(), WithinAbs(0.0, 1e-9));
    const double total_weight_N = 6.50 * kBookGravity;
    CHECK_THAT(total_weight_N, WithinAbs(63.7, 0.05));
    CHECK_THAT(solution.muscles[0].tension_N / total_weight_N, WithinAbs(7.3846, 5e-5));
    CHECK_THAT(-solution.joint_reaction_N->y() / total_weight_N, WithinAbs(6.3846, 5e-5));
    CHECK(lever_about_joint(body, pulls, solution, 0)->of_whole.lever_class == LeverClass::third);
}

// College Physics 2e, problem 9.31 with the muscle kept perpendicular to the forearm: 407 N at 30°
// below level (the number is printed on a third-party solution page). With the muscle across the
// bone both torques share the arm's length, so the force goes with the cosine of the slope.
TEST_CASE("a biceps at right angles to the forearm relaxes with the cosine of its slope",
          "[oracle][muscle]") {
    const FreeBody sloping = forearm_at(-30.0);
    CHECK_THAT(solved(sloping, {biceps_across_forearm(sloping)}).muscles[0].tension_N,
               WithinAbs(407.4, 0.05));
    for (const double slope_deg : {-60.0, -15.0, 20.0, 75.0}) {
        const FreeBody body = forearm_at(slope_deg);
        CHECK_THAT(solved(body, {biceps_across_forearm(body)}).muscles[0].tension_N,
                   WithinRel(470.40 * std::cos(deg(slope_deg)), 1e-9));
    }
}

// University Physics vol. 1, chapter 12 problem: 5.0 kg at 35 cm, forearm and hand 3.0 kg at 15 cm,
// biceps upright at 4 cm, θ = 60°: 539 N and 461 N, independent of the angle.
TEST_CASE("an upright biceps pulls the same at every slope of the forearm", "[oracle][muscle]") {
    for (const double slope_deg : {60.0, 30.0, 0.0, -45.0}) {
        FreeBody body = book_body("forearm, hand and load");
        body.along = at_angle(slope_deg);
        body.segments = {{"forearm and hand", 3.0, 0.150 * body.along, Vec3::Zero()}};
        body.loads = {weight("load", 5.0, 0.350 * body.along)};

        AttachmentLine upright; // the origin stands straight above the insertion
        upright.insertion_m = 0.040 * body.along;
        upright.origin_m = upright.insertion_m + Vec3(0.0, 0.30, 0.0);
        Muscle biceps;
        biceps.name = "biceps";
        const auto pull = pull_at(biceps, 0.0, upright, JointAxis{});
        REQUIRE(pull);
        const MuscleSolution solution = solved(body, {*pull});
        CHECK_THAT(solution.muscles[0].tension_N, WithinAbs(539.0, 0.05));
        CHECK_THAT(solution.joint_reaction_N->y(), WithinAbs(-460.6, 0.05));
    }
}

// University Physics vol. 1, Example 12.4: 50.0 lb at 13.0 in, biceps upright at 1.5 in, β = 60°:
// T 433.3 lb = 1927 N up, F 383.3 lb = 1705 N down, with the book's 4.448 N to the pound.
TEST_CASE("University Physics 12.4: 50 lb in the hand, 433 lb in the biceps", "[oracle][muscle]") {
    constexpr double kBookPound_N = 4.448;
    FreeBody body = book_body("forearm");
    body.along = at_angle(-30.0);
    body.loads = {{"weight", 13.0 * kInch_m * body.along, Vec3(0.0, -50.0 * kBookPound_N, 0.0)}};
    const Pull biceps = pull_along("biceps", 1.5 * kInch_m * body.along, Vec3::UnitY(), body);
    const MuscleSolution solution = solved(body, {biceps});
    CHECK_THAT(solution.muscles[0].tension_N / kBookPound_N, WithinAbs(433.333, 0.0005));
    CHECK_THAT(solution.muscles[0].tension_N, WithinAbs(1927.0, 0.5));
    CHECK_THAT(solution.joint_reaction_N->y() / kBookPound_N, WithinAbs(-383.333, 0.0005));
    CHECK_THAT(solution.joint_reaction_N->y(), WithinAbs(-1705.0, 0.5));
}

namespace {

/// College Physics 2e, Example 9.5: hip at the origin, head to the right.
FreeBody stoop_lift() {
    FreeBody body = book_body("upper body and box");
    body.segments = {{"upper body", 55.0, Vec3(0.350, 0.0, 0.0), Vec3::Zero()}};
    body.loads = {weight("box", 30.0, Vec3(0.500, 0.0, 0.0))};
    return body;
}

/// Back muscles pulling 29.0° below the horizontal, towards the pelvis, above the spine.
Pull back_muscles(double arm_m) {
    const Vec3 across_spine = at_angle(180.0 + 29.0 - 90.0);
    return pull_along("back muscles", arm_m * across_spine, at_angle(180.0 + 29.0), stoop_lift());
}

} // namespace

// Example 9.5: F_B 4.20e3 N, F_Vy 2.87e3, F_Vx 3.67e3, F_V 4.66e3 N at 38.0°; ratios 5.04 and 5.59.
TEST_CASE("College Physics 9.5: stooping to lift 30 kg presses 4.66 kN on the spine",
          "[oracle][muscle]") {
    const MuscleSolution solution = solved(stoop_lift(), {back_muscles(0.0800)});
    CHECK_THAT(solution.muscles[0].tension_N, WithinAbs(4195.63, 0.005));
    const Vec3 reaction_N = *solution.joint_reaction_N;
    CHECK_THAT(reaction_N.y(), WithinAbs(2867.08, 0.005));
    CHECK_THAT(reaction_N.x(), WithinAbs(3669.58, 0.005));
    CHECK_THAT(reaction_N.norm(), WithinAbs(4656.82, 0.005));
    CHECK_THAT(direction_deg(reaction_N), WithinAbs(38.001, 0.0005));
    CHECK_THAT(solution.muscles[0].tension_N / 833.0, WithinAbs(5.0368, 5e-5));
    CHECK_THAT(reaction_N.norm() / 833.0, WithinAbs(5.5904, 5e-5));
}

// The book's 8 cm is longer than the arms usually taken for the lumbar extensors (5 cm: "fixed 5 cm
// (2 in)", Güngör 2013, thesis abstract). The same torque with 5 to 8 cm: 6713 to 4196 N.
TEST_CASE("the arm of the back muscles decides the answer: 5 to 8 cm, 6713 to 4196 N",
          "[oracle][muscle]") {
    Pull pull = back_muscles(0.0800);
    pull.arm_range_m = {0.050, 0.080};
    const MuscleSolution solution = solved(stoop_lift(), {pull});
    REQUIRE(solution.muscles[0].tension_range_N);
    CHECK_THAT(solution.muscles[0].tension_range_N->low, WithinAbs(4195.63, 0.005));
    CHECK_THAT(solution.muscles[0].tension_range_N->high, WithinAbs(6713.0, 0.5));
}

// College Physics 2e, problem 9.28: quadriceps tendon 1250 N, 55° above and 75° below the
// horizontal, both pulling back: 1.1e3 N on the femur at 190° from +x.
TEST_CASE("College Physics 9.28: the kneecap presses the femur with 1.06 kN at 190°",
          "[oracle][muscle]") {
    FreeBody patella = book_body("kneecap");
    patella.loads = {{"quadriceps tendon", Vec3::Zero(), 1250.0 * at_angle(180.0 - 55.0)},
                     {"patellar tendon", Vec3::Zero(), 1250.0 * at_angle(180.0 + 75.0)}};
    const auto demand = demand_on_joint(patella);
    REQUIRE(demand);
    const Vec3 on_femur_N = -demand->force_N;
    CHECK_THAT(on_femur_N.norm(), WithinAbs(1056.55, 0.005));
    CHECK_THAT(direction_deg(on_femur_N), WithinAbs(190.00, 0.005));
}

// College Physics 2e, problem 9.30: head 50 N, neck muscle 60 N at 33° below the horizontal:
// F_V 97 N, 59° above the horizontal.
TEST_CASE("College Physics 9.30: the bent head rests on the neck with 97 N at 59°",
          "[oracle][muscle]") {
    FreeBody head = book_body("head");
    head.loads = {{"head", Vec3::Zero(), Vec3(0.0, -50.0, 0.0)},
                  {"neck muscle", Vec3::Zero(), 60.0 * at_angle(180.0 + 33.0)}};
    const auto demand = demand_on_joint(head);
    REQUIRE(demand);
    CHECK_THAT(demand->force_N.norm(), WithinAbs(96.788, 0.0005));
    CHECK_THAT(direction_deg(demand->force_N), WithinAbs(58.674, 0.0005));
}

// College Physics 2e, problem 9.32: head 50 N 2.5 cm in front of the joint, muscle 5.0 cm behind:
// 25 N down, joint 75 N up; a first-class lever.
TEST_CASE("College Physics 9.32: the upright head is a first-class lever, 25 N and 75 N",
          "[oracle][muscle]") {
    FreeBody head = book_body("head");
    head.loads = {{"head", Vec3(0.025, 0.0, 0.0), Vec3(0.0, -50.0, 0.0)}};
    const std::vector<Pull> pulls{
        pull_along("neck extensors", Vec3(-0.050, 0.0, 0.0), -Vec3::UnitY(), head)};
    const MuscleSolution solution = solved(head, pulls);
    CHECK_THAT(solution.muscles[0].tension_N, WithinAbs(25.0, 1e-9));
    CHECK_THAT(solution.joint_reaction_N->y(), WithinAbs(75.0, 1e-9));
    CHECK(lever_about_joint(head, pulls, solution, 0)->of_whole.lever_class == LeverClass::first);
}

namespace {

/// College Physics 2e, problem 9.33: ankle at the origin, toes to the right; the ground carries
/// 75 kg at the ball of the foot, 12 cm ahead of the ankle.
FreeBody foot_on_toes() {
    FreeBody foot = book_body("foot");
    foot.loads = {{"ground", Vec3(0.12, 0.0, 0.0), Vec3(0.0, 75.0 * kBookGravity, 0.0)}};
    return foot;
}

Pull achilles() {
    return pull_along("calf", Vec3(-0.040, 0.0, 0.0), Vec3::UnitY(), foot_on_toes());
}

} // namespace

// Problem 9.33: F_A 2.21e3 N up, pivot force 2.94e3 N down.
TEST_CASE("College Physics 9.33: on the toes of one foot the calf pulls 2205 N",
          "[oracle][muscle]") {
    FreeBody foot = foot_on_toes();
    foot.axis_direction = -Vec3::UnitZ(); // the foot's own sense of plantar flexion
    const Pull calf = pull_along("calf", Vec3(-0.040, 0.0, 0.0), Vec3::UnitY(), foot);
    const MuscleSolution solution = solved(foot, {calf});
    CHECK_THAT(solution.muscles[0].tension_N, WithinAbs(2205.0, 1e-9));
    CHECK_THAT(solution.joint_reaction_N->y(), WithinAbs(-2940.0, 1e-9));
}

// First class about the ankle: College Physics 2e, problem 9.33. Second class about the ball of the
// foot: Behnke, Kinetic Anatomy 3e, Fig. 1.22. The forces are the same: 2205 × 16 = 2940 × 12.
TEST_CASE("the calf raise is first class about the ankle and second class about the ball",
          "[oracle][muscle]") {
    const FreeBody foot = foot_on_toes();
    const std::vector<Pull> pulls{achilles()};
    const MuscleSolution solution = solved(foot, pulls);

    const auto ankle = lever_about_joint(foot, pulls, solution, 0);
    REQUIRE(ankle);
    CHECK(ankle->of_whole.lever_class == LeverClass::first);
    CHECK_THAT(ankle->effort_arm_m, WithinAbs(0.04, 1e-12));
    CHECK_THAT(*ankle->advantage, WithinRel(1.0 / 3.0, 1e-12)); // 735 / 2205
    CHECK_THAT(ankle->net_torque_Nm, WithinAbs(0.0, 1e-9));

    const auto ball = lever_about_support(foot, pulls, solution, 0, 0);
    REQUIRE(ball);
    CHECK(ball->of_whole.lever_class == LeverClass::second);
    CHECK_THAT(ball->effort_arm_m, WithinAbs(0.16, 1e-12));
    CHECK_THAT(*ball->advantage, WithinRel(4.0 / 3.0, 1e-12));   // 2940 / 2205
    CHECK_THAT(ball->effort_torque_Nm, WithinAbs(-352.8, 1e-9)); // 2205 × 0.16
    CHECK_THAT(ball->load_torque_Nm, WithinAbs(352.8, 1e-9));    // 2940 × 0.12
    CHECK_THAT(ball->net_torque_Nm, WithinAbs(0.0, 1e-9));
}

// Taking the body weight of 735 N alone as the load about the ball gives 735 × 12 / 16 = 551 N; the
// foot would not be in balance about the ankle with it.
TEST_CASE("551 N, the answer with body weight as the load at the ankle, leaves the foot turning",
          "[oracle][muscle]") {
    constexpr double kWrongPull_N = 735.0 * 0.12 / 0.16;
    CHECK_THAT(kWrongPull_N, WithinAbs(551.0, 0.5));
    std::vector<NamedForce> forces = foot_on_toes().loads;
    forces.push_back({"calf", Vec3(-0.04, 0.0, 0.0), Vec3(0.0, kWrongPull_N, 0.0)});
    const double left_over_Nm = resultant_about(Vec3::Zero(), forces).torque_Nm.z();
    CHECK_THAT(left_over_Nm, WithinAbs(66.15, 1e-9)); // 735 × 0.12 - 551.25 × 0.04
}

// College Physics 2e, problem 9.37: 50.0 kg, centre of mass 0.90 m and hands 1.50 m from the toes,
// triceps arm 1.75 cm, hand force 20.0 cm from the elbow, rise 0.240 m, 25 in a minute: 147 N on
// each hand, 1680 N in each triceps, 3.4 times the weight; 118 J and 49.0 W.
TEST_CASE("College Physics 9.37: a push-up, from the toes to the triceps", "[oracle][muscle]") {
    FreeBody whole = book_body("whole body");
    whole.segments = {{"body", 50.0, Vec3(0.90, 0.0, 0.0), Vec3::Zero()}};
    const std::vector<Pull> hands{
        pull_along("left hand", Vec3(1.50, 0.0, 0.0), Vec3::UnitY(), whole),
        pull_along("right hand", Vec3(1.50, 0.0, 0.0), Vec3::UnitY(), whole)};
    const MuscleSolution on_ground = solved(whole, hands);
    CHECK_THAT(on_ground.muscles[0].tension_N, WithinAbs(147.00, 1e-9));
    CHECK_THAT(on_ground.muscles[1].tension_N, WithinAbs(147.00, 1e-9));

    FreeBody forearm = book_body("forearm and hand");
    forearm.loads = {
        {"ground", Vec3(0.200, 0.0, 0.0), Vec3(0.0, on_ground.muscles[0].tension_N, 0.0)}};
    const MuscleSolution elbow = solved(forearm, {pull_with_arm("triceps", -0.0175)});
    CHECK_THAT(elbow.muscles[0].tension_N, WithinAbs(1680.0, 1e-9));
    CHECK_THAT(elbow.muscles[0].tension_N / (50.0 * kBookGravity), WithinAbs(3.4286, 5e-5));
}

// The same problem's work: the torque about the toes, summed over the turn that lifts the centre of
// mass by 0.240 m (Simpson's rule, 200 steps: error far below the fourth digit).
TEST_CASE("College Physics 9.37: torque times turn is the work of a push-up, 118 J",
          "[oracle][muscle]") {
    constexpr int kSteps = 200;
    const double turn_rad = std::asin(0.240 / 0.90);
    double work_J = 0.0;
    for (int i = 0; i <= kSteps; ++i) {
        const double angle = turn_rad * i / kSteps;
        FreeBody whole = book_body("whole body");
        const Vec3 centre_m(0.90 * std::cos(angle), 0.90 * std::sin(angle), 0.0);
        whole.segments = {{"body", 50.0, centre_m, Vec3::Zero()}};
        const double part = i == 0 || i == kSteps ? 1.0 : (i % 2 == 1 ? 4.0 : 2.0);
        work_J += part * demand_on_joint(whole)->torque_Nm * turn_rad / kSteps / 3.0;
    }
    CHECK_THAT(work_J, WithinAbs(117.6, 1e-6));
    CHECK_THAT(work_J * 25.0 / 60.0, WithinAbs(49.0, 1e-6));
}

// J Electromyogr Kinesiol 2012;22(6):814, Table 2, after Chaffin et al. 1999: torque of the trunk
// about L5/S1 18.34, 34.47, 46.82 N·m and arm 8.91, 16.75, 22.57 cm at 20, 40, 60° of flexion, 60
// kg man. The link and mass come from the first row and must give the others: the arm goes with the
// sine. The 60° row is printed 0.8 % above its own arm × weight, so it gets 1 %.
TEST_CASE("the trunk's torque about the low back grows with the sine of its lean",
          "[oracle][muscle]") {
    const double link_m = 0.0891 / std::sin(deg(20.0));
    const double mass_kg = 18.34 / (0.0891 * 9.8);
    const auto torque_at = [&](double lean_deg) {
        FreeBody trunk = book_body("trunk");
        trunk.segments = {
            {"trunk", mass_kg,
             Vec3(link_m * std::sin(deg(lean_deg)), link_m * std::cos(deg(lean_deg)), 0.0),
             Vec3::Zero()}};
        return demand_on_joint(trunk)->torque_Nm;
    };
    CHECK_THAT(torque_at(40.0), WithinAbs(34.47, 0.02)); // 0.1 %: inputs of three to four digits
    CHECK_THAT(torque_at(60.0), WithinRel(46.82, 0.01));
}
