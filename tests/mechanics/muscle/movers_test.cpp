#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/muscle/movers.h"
#include "mechanics/muscle/muscle_on_body.h"

#include <algorithm>
#include <cmath>

using namespace steelyard::mechanics;

namespace {

constexpr Hinge kAbduction = Hinge::right_shoulder_abduction;

/// Raising the arm to the side, and drawing it across once it is raised forward.
std::vector<JointAction> shoulder_actions() {
    const PoseRange hanging{Hinge::right_shoulder_flexion, {degrees(-45.0), degrees(45.0)}};
    const PoseRange forward{Hinge::right_shoulder_flexion, {degrees(45.0), degrees(135.0)}};
    return {{"abduction", kAbduction, TurnSense::positive, {hanging}, {"deltoid"}, {"helper"}, {}},
            {"adduction", kAbduction, TurnSense::negative, {hanging}, {"broad back"}, {}, {}},
            {"across", kAbduction, TurnSense::negative, {forward}, {"breast", "deltoid"}, {}, {}}};
}

Muscle muscle_with_arm(const std::string& name, double arm_m) {
    Muscle muscle;
    muscle.name = name;
    muscle.hinge = kAbduction;
    muscle.arms = {{ArmTable{{{0.0, arm_m}}}, 0.0, {"made up for the test", Evidence::memory}}};
    muscle.actions = shoulder_actions();
    muscle.arms.front().holds = {{Hinge::right_shoulder_flexion, {degrees(-20.0), degrees(20.0)}}};
    return muscle;
}

Muscle by_name(const std::string& name) {
    Muscle muscle;
    muscle.name = name;
    muscle.hinge = kAbduction;
    muscle.actions = shoulder_actions();
    return muscle;
}

std::vector<Muscle> shoulder() {
    return {muscle_with_arm("deltoid", 0.02), muscle_with_arm("helper", 0.02),
            muscle_with_arm("small adductor", -0.008), by_name("broad back"), by_name("breast")};
}

Pose arm_forward_by(double flexion_deg) {
    Pose pose;
    pose[Hinge::right_shoulder_flexion] = degrees(flexion_deg);
    return pose;
}

/// Both arms out to the side with a dumbbell in each hand.
BodyCase lateral_raise(double mass_kg) {
    BodyCase body_case = standing(winter_body());
    for (const Hinge hinge : {kAbduction, Hinge::left_shoulder_abduction})
        body_case.pose[hinge] = degrees(80.0);
    body_case.resistances = {{"right", Dumbbell{Segment::right_hand, mass_kg}},
                             {"left", Dumbbell{Segment::left_hand, mass_kg}}};
    return body_case;
}

MuscleSolution solved(const BodyCase& body_case, Hinge hinge, const std::vector<Muscle>& muscles) {
    const auto result = solve_body(body_case);
    REQUIRE(result);
    const auto at = solve_muscles_at(body_case, *result, hinge, muscles, SharingRule::equal_force);
    REQUIRE(at);
    return at->solution;
}

} // namespace

TEST_CASE("movers and helpers of the action asked take part, and nobody else", "[movers]") {
    const Movers movers = movers_of(shoulder(), arm_forward_by(0.0), kAbduction, 10.0);
    CHECK_FALSE(movers.missing);
    CHECK(movers.take_part == std::vector<bool>{true, true, false, false, false});
}

TEST_CASE("a main mover without an arm is missing, whatever else could turn the joint that way",
          "[movers]") {
    const Movers movers = movers_of(shoulder(), arm_forward_by(0.0), kAbduction, -10.0);
    REQUIRE(movers.missing);
    CHECK(movers.missing->action == "adduction");
    CHECK(movers.missing->without_arms == std::vector<std::string>{"broad back"});
}

TEST_CASE("the plane of the arm makes it another action, in which arms of the first do not hold",
          "[movers]") {
    const Movers movers = movers_of(shoulder(), arm_forward_by(80.0), kAbduction, -10.0);
    REQUIRE(movers.missing);
    CHECK(movers.missing->action == "across");
    CHECK(movers.missing->without_arms == std::vector<std::string>{"breast"});
    CHECK(movers.missing->arms_elsewhere == std::vector<std::string>{"deltoid"});
}

TEST_CASE("a movement that no file knows has no movers", "[movers]") {
    const Movers movers = movers_of(shoulder(), arm_forward_by(80.0), kAbduction, 10.0);
    REQUIRE(movers.missing);
    CHECK(movers.missing->action.empty());
    CHECK(movers_of({}, Pose{}, Hinge::right_wrist_flexion, 1.0).missing);
}

TEST_CASE("the left side reads the right side's poses in its mirror", "[movers]") {
    Pose pose;
    pose[Hinge::left_shoulder_flexion] = degrees(80.0); // the right arm hangs
    const auto across = movers_of(shoulder(), pose, Hinge::left_shoulder_abduction, -10.0);
    REQUIRE(across.missing);
    CHECK(across.missing->action == "across");
    CHECK(movers_of(shoulder(), pose, kAbduction, -10.0).missing->action == "adduction");
}

TEST_CASE("muscles that state no action are taken as complete", "[movers]") {
    std::vector<Muscle> muscles = shoulder();
    for (Muscle& muscle : muscles)
        muscle.actions.clear();
    const Movers movers = movers_of(muscles, Pose{}, kAbduction, -10.0);
    CHECK_FALSE(movers.missing);
    CHECK(std::count(movers.take_part.begin(), movers.take_part.end(), true) == 5);
}

TEST_CASE("where a main mover is missing torque and arms stay, and no force is said", "[movers]") {
    std::vector<Muscle> muscles = shoulder();
    muscles[0].arms.clear(); // of the deltoid only the name is left
    for (const Hinge hinge : {kAbduction, Hinge::left_shoulder_abduction}) {
        const MuscleSolution solution = solved(lateral_raise(5.0), hinge, muscles);
        CHECK(solution.outcome == MuscleOutcome::not_modelled);
        CHECK(solution.torque_asked_Nm > 10.0);
        CHECK(solution.muscles[1].arm_m == 0.02);
        for (const MuscleReading& muscle : solution.muscles)
            CHECK(muscle.tension_N == 0.0);
        CHECK_FALSE(solution.joint_reaction_N);
    }
}

TEST_CASE("a pull beyond cross-section times specific tension is no result", "[movers]") {
    std::vector<Muscle> muscles = shoulder();
    const double torque_Nm = solved(lateral_raise(5.0), kAbduction, muscles).torque_asked_Nm;
    // Two muscles share by equal force, each with an arm of 2 cm.
    const double tension_N = torque_Nm / 0.04;
    const double just_enough_m2 =
        1.001 * tension_N / highest_specific_tension_Pa(AreaMethod::dissection);
    muscles[0].cross_section = CrossSection{just_enough_m2, AreaMethod::dissection, {}};
    CHECK(solved(lateral_raise(5.0), kAbduction, muscles).outcome == MuscleOutcome::balanced);

    muscles[0].cross_section->area_m2 *= 0.99;
    const MuscleSolution beyond = solved(lateral_raise(5.0), kAbduction, muscles);
    CHECK(beyond.outcome == MuscleOutcome::beyond_cross_section);
    CHECK(*beyond.muscles[0].most_N < beyond.muscles[0].tension_N);
    CHECK_FALSE(beyond.joint_reaction_N);
    CHECK_FALSE(beyond.joint_reaction_range_N);

    // The same area from imaging gives less: each goes with its own specific tension.
    muscles[0].cross_section = CrossSection{just_enough_m2, AreaMethod::imaging, {}};
    CHECK(solved(lateral_raise(5.0), kAbduction, muscles).outcome ==
          MuscleOutcome::beyond_cross_section);
}
