#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/muscle/muscle_on_body.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// Standing, elbows bent to a right angle, a dumbbell in each hand; shoulders a little abducted so
/// that the three axes of the shoulder all carry something.
BodyCase two_dumbbells() {
    BodyCase body_case = standing(winter_body());
    for (const Hinge elbow : {Hinge::right_elbow_flexion, Hinge::left_elbow_flexion})
        body_case.pose[elbow] = degrees(90.0);
    for (const Hinge shoulder : {Hinge::right_shoulder_abduction, Hinge::left_shoulder_abduction})
        body_case.pose[shoulder] = degrees(20.0);
    body_case.resistances = {{"right dumbbell", Dumbbell{Segment::right_hand, 6.0}},
                             {"left dumbbell", Dumbbell{Segment::left_hand, 6.0}}};
    return body_case;
}

BodyCase on_tiptoe() {
    BodyCase body_case = standing(winter_body());
    // The foot stands on its ball, heel raised by 20 degrees; the toes stay level.
    for (const Hinge ankle : {Hinge::right_ankle_flexion, Hinge::left_ankle_flexion})
        body_case.pose[ankle] = degrees(-20.0);
    for (const Hinge toes : {Hinge::right_toe_extension, Hinge::left_toe_extension})
        body_case.pose[toes] = degrees(20.0);
    body_case.pose.anchor.point = {Segment::right_toes, Spot::toe_tip, 0.0, Vec3::Zero()};
    body_case.support =
        OnContacts{{{Segment::right_foot, Patch::ball, {}}, {Segment::left_foot, Patch::ball, {}}},
                   kSoleFriction};
    return body_case;
}

BodyResult solved(const BodyCase& body_case) {
    const auto result = solve_body(body_case);
    REQUIRE(result);
    return *result;
}

Muscle elbow_flexor() {
    Muscle muscle;
    muscle.name = "flexor";
    muscle.hinge = Hinge::right_elbow_flexion;
    muscle.line =
        AttachmentsOnBody{{Segment::right_upper_arm, Spot::along, 0.05, Vec3(0.02, 0.0, 0.01)},
                          {Segment::right_forearm, Spot::along, 0.17, Vec3(0.005, 0.0, 0.0)},
                          {}};
    return muscle;
}

Muscle elbow_extensor() {
    Muscle muscle;
    muscle.name = "extensor";
    muscle.hinge = Hinge::right_elbow_flexion;
    muscle.arms = {{ArmTable{{{0.0, -0.02}}}, 0.0, {"made up for the test", Evidence::memory}}};
    return muscle;
}

Muscle calf() {
    Muscle muscle;
    muscle.name = "calf";
    muscle.hinge = Hinge::right_ankle_flexion;
    muscle.line = AttachmentsOnBody{{Segment::right_shank, Spot::along, 0.3, Vec3(-0.04, 0.0, 0.0)},
                                    {Segment::right_foot, Spot::heel, 0.0, Vec3(0.0, 0.04, 0.0)},
                                    {}};
    return muscle;
}

HingeMuscles at(const BodyCase& body_case, Hinge hinge, const std::vector<Muscle>& muscles) {
    const auto found = solve_muscles_at(body_case, solved(body_case), hinge,
                                        muscles_at(muscles, hinge), SharingRule::equal_force);
    REQUIRE(found);
    return *found;
}

} // namespace

TEST_CASE("all beyond a hinge, cut free, asks of the hinge what the whole body's solution says",
          "[muscle][body]") {
    for (const BodyCase& body_case : {two_dumbbells(), on_tiptoe()}) {
        const BodyResult result = solved(body_case);
        for (const HingeInfo& info : all_hinges()) {
            INFO(info.label);
            const auto demand = demand_on_joint(free_body_at(body_case, result, info.hinge));
            REQUIRE(demand);
            // Two sums of some twenty forces of up to 1 kN: rounding of 1e-10.
            CHECK_THAT(demand->torque_Nm, WithinAbs(result.muscle(info.hinge), 1e-10));
            const Vec3 force_N = result.joint_force(joint_info(info.joint).segment);
            CHECK_THAT((demand->force_N - force_N).norm(), WithinAbs(0.0, 1e-10));
        }
    }
}

TEST_CASE("left and right muscles of a symmetric pose pull alike, in mirror image",
          "[muscle][body]") {
    const BodyCase body_case = two_dumbbells();
    const HingeMuscles right = at(body_case, Hinge::right_elbow_flexion, {elbow_flexor()});
    const HingeMuscles left = at(body_case, Hinge::left_elbow_flexion, {elbow_flexor()});
    CHECK(right.solution.outcome == MuscleOutcome::balanced);
    CHECK_THAT(left.solution.muscles[0].tension_N,
               WithinRel(right.solution.muscles[0].tension_N, 1e-12));
    Vec3 mirrored = *left.solution.joint_reaction_N;
    mirrored.z() = -mirrored.z();
    CHECK_THAT((mirrored - *right.solution.joint_reaction_N).norm(), WithinAbs(0.0, 1e-9));
}

TEST_CASE("tension, weight and joint reaction hold the forearm in balance", "[muscle][body]") {
    const BodyCase body_case = two_dumbbells();
    const BodyResult result = solved(body_case);
    const HingeMuscles elbow = at(body_case, Hinge::right_elbow_flexion, {elbow_flexor()});
    std::vector<NamedForce> all =
        outside_forces(free_body_at(body_case, result, Hinge::right_elbow_flexion));
    const PlacedLine& line = *elbow.pulls[0].line;
    all.push_back(
        {"flexor", line.insertion_m, elbow.solution.muscles[0].tension_N * line.direction});
    const Vec3 joint_m = result.placement.axis_point_m(Hinge::right_elbow_flexion);
    all.push_back({"joint", joint_m, *elbow.solution.joint_reaction_N});
    const Resultant left_over = resultant_about(joint_m, all);
    CHECK_THAT(left_over.force_N.norm(), WithinAbs(0.0, 1e-9));
    CHECK_THAT(left_over.torque_Nm.dot(result.placement.axis(Hinge::right_elbow_flexion)),
               WithinAbs(0.0, 1e-9));
    REQUIRE(elbow.levers[0]);
    CHECK(elbow.levers[0]->of_whole.lever_class == LeverClass::third);
}

TEST_CASE("of all the muscles of a hinge those work that turn it the way it is asked",
          "[muscle][body]") {
    const std::vector<Muscle> both{elbow_flexor(), elbow_extensor(), calf()};
    const HingeMuscles elbow = at(two_dumbbells(), Hinge::right_elbow_flexion, both);
    REQUIRE(elbow.pulls.size() == 2); // the calf is no muscle of the elbow
    CHECK(elbow.solution.muscles[0].tension_N > 0.0);
    CHECK(elbow.solution.muscles[1].tension_N == 0.0);

    BodyCase pushed = two_dumbbells();
    pushed.resistances = {
        {"partner", PartnerPush{{Segment::right_forearm, Spot::along, 0.9, Vec3::Zero()},
                                Vec3::UnitY(),
                                80.0,
                                false}}};
    const HingeMuscles held_up = at(pushed, Hinge::right_elbow_flexion, both);
    CHECK(held_up.solution.muscles[0].tension_N == 0.0);
    CHECK(held_up.solution.muscles[1].tension_N > 0.0);
}

// Behnke, Kinetic Anatomy 3e, Fig. 1.22 (second class about the ball of the foot); OpenStax College
// Physics 2e, problem 9.33 (the ankle as the pivot, a first-class layout).
TEST_CASE("on tiptoe the whole body's foot is a lever of both classes", "[muscle][body]") {
    const BodyCase body_case = on_tiptoe();
    const HingeMuscles ankle = at(body_case, Hinge::right_ankle_flexion, {calf()});
    REQUIRE(ankle.solution.outcome == MuscleOutcome::balanced);
    REQUIRE(ankle.levers[0]);
    CHECK(ankle.levers[0]->of_whole.lever_class == LeverClass::first);

    const auto& ball = ankle.levers_about_support[0];
    REQUIRE(ball);
    CHECK(ball->of_whole.lever_class == LeverClass::second);
    CHECK_THAT(ball->net_torque_Nm, WithinAbs(0.0, 1e-9));
    // The ankle carries more than the half of the body that stands on it: the calf adds to it.
    CHECK(ankle.solution.joint_reaction_N->norm() > 75.0 * kStandardGravity / 2.0);
}

TEST_CASE("turning the palm leaves the elbow's muscles on the ulna where they are",
          "[muscle][body]") {
    BodyCase body_case = two_dumbbells();
    const double palm_up_N =
        at(body_case, Hinge::right_elbow_flexion, {elbow_flexor()}).solution.muscles[0].tension_N;
    body_case.pose[Hinge::right_forearm_rotation] = degrees(160.0);
    const HingeMuscles palm_down = at(body_case, Hinge::right_elbow_flexion, {elbow_flexor()});
    // The load in the grip stays where it was, so nothing changes but rounding.
    CHECK_THAT(palm_down.solution.muscles[0].tension_N, WithinRel(palm_up_N, 1e-9));
}

TEST_CASE("a muscle attached to a spot that its segment lacks is refused by name",
          "[muscle][body]") {
    Muscle lost = calf();
    std::get<AttachmentsOnBody>(*lost.line).origin.spot = Spot::heel; // of the shank
    const BodyCase body_case = on_tiptoe();
    const auto found = pull_on_body(lost, body_case, solved(body_case), Hinge::right_ankle_flexion);
    REQUIRE_FALSE(found);
    CHECK(found.error().key.find("calf.line") == 0);
}

namespace {

/// A muscle of one hinge that pulls at a place of the bone, at a fixed angle to it.
Muscle pulling_at(Hinge hinge, Segment segment, double along, TurnSense turns) {
    Muscle muscle;
    muscle.name = "muscle";
    muscle.hinge = hinge;
    muscle.line =
        FixedAngleOnBody{{segment, Spot::along, along, Vec3(0.0, 0.0, 0.0)}, degrees(30.0), turns};
    return muscle;
}

} // namespace

TEST_CASE("a load beyond the next joint keeps its place in the order however that joint is bent",
          "[muscle][body]") {
    // Arms out to the side; with the elbows straight, or bent until the hands are beside the
    // shoulders, nearer to them than where the muscle pulls.
    const Muscle raiser = pulling_at(Hinge::right_shoulder_abduction, Segment::right_upper_arm, 0.5,
                                     TurnSense::positive);
    for (const double elbow_deg : {0.0, 90.0, 140.0}) {
        BodyCase body_case = two_dumbbells();
        for (const Hinge elbow : {Hinge::right_elbow_flexion, Hinge::left_elbow_flexion})
            body_case.pose[elbow] = degrees(elbow_deg);
        for (const Hinge shoulder :
             {Hinge::right_shoulder_abduction, Hinge::left_shoulder_abduction})
            body_case.pose[shoulder] = degrees(60.0);
        const HingeMuscles shoulder = at(body_case, Hinge::right_shoulder_abduction, {raiser});
        REQUIRE(shoulder.levers[0]);
        INFO(elbow_deg);
        CHECK(shoulder.levers[0]->of_whole.lever_class == LeverClass::third);
    }
}

TEST_CASE("the back is a first-class lever wherever the load is held", "[muscle][body]") {
    Muscle back = pulling_at(Hinge::lumbar_flexion, Segment::trunk, 0.3, TurnSense::negative);
    for (const double lean_deg : {5.0, 45.0, 80.0})
        for (const double raised_deg : {0.0, 90.0, 170.0}) {
            BodyCase body_case = two_dumbbells();
            body_case.support = Held{Segment::pelvis};
            body_case.pose[Hinge::lumbar_flexion] = degrees(lean_deg);
            for (const Hinge shoulder :
                 {Hinge::right_shoulder_flexion, Hinge::left_shoulder_flexion})
                body_case.pose[shoulder] = degrees(raised_deg);
            const HingeMuscles low_back = at(body_case, Hinge::lumbar_flexion, {back});
            if (low_back.solution.muscles[0].tension_N == 0.0)
                continue; // the load lies behind: the abdominals' work
            INFO(lean_deg << ", " << raised_deg);
            REQUIRE(low_back.levers[0]);
            CHECK(low_back.levers[0]->of_whole.lever_class == LeverClass::first);
        }
}

TEST_CASE("only a foot on its ball is seen about a second pivot", "[muscle][body]") {
    const HingeMuscles on_toes = at(on_tiptoe(), Hinge::right_ankle_flexion, {calf()});
    CHECK(on_toes.levers_about_support[0]);
    const HingeMuscles flat = at(two_dumbbells(), Hinge::right_ankle_flexion, {calf()});
    CHECK_FALSE(flat.levers_about_support[0]);
}
