#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/resistance/band.h"
#include "mechanics/resistance/resistance_forces.h"

#include <cmath>
#include <limits>

namespace steelyard::mechanics {

namespace {

constexpr double kRounding = 1.0e-9;
const double kNan = std::numeric_limits<double>::quiet_NaN();

BodyPoint grip(Segment hand = Segment::right_hand) {
    return {hand, Spot::grip, 0.0, Vec3::Zero()};
}

BodyCase loaded(const Resistance& resistance) {
    BodyCase body_case = standing(winter_body());
    body_case.pose[Hinge::right_elbow_flexion] = degrees(90);
    body_case.pose[Hinge::left_elbow_flexion] = degrees(90);
    body_case.support = Held{Segment::pelvis};
    body_case.resistances = {resistance};
    return body_case;
}

BodyForce first_force(const Resistance& resistance) {
    return solve_body(loaded(resistance)).value().forces[0];
}

MechanicsError fault_of(const Resistance& resistance) {
    const auto result = solve_body(loaded(resistance));
    return result ? MechanicsError{} : result.error();
}

} // namespace

TEST_CASE("A barbell weighs half on each hand", "[resistance]") {
    const BodyResult result = solve_body(loaded({"bar", Barbell{30.0, std::nullopt}})).value();
    for (const std::size_t hand : {0u, 1u})
        CHECK_THAT(result.forces[hand].force_N.y(), WithinAbs(-15.0 * kStandardGravity, kRounding));
    CHECK(result.forces[0].segment == Segment::right_hand);
    CHECK(result.forces[1].segment == Segment::left_hand);
}

TEST_CASE("A barbell across the back presses on the trunk", "[resistance]") {
    const BodyForce force = first_force(
        {"bar", Barbell{60.0, BodyPoint{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}}});
    CHECK(force.segment == Segment::trunk);
    CHECK_THAT(force.force_N.y(), WithinAbs(-60.0 * kStandardGravity, kRounding));
}

TEST_CASE("A kettlebell that hangs pulls through the grip, one held stiff has an arm from it",
          "[resistance]") {
    Kettlebell bell{Segment::right_hand, 8.0, 0.12, false, -Vec3::UnitY()};
    const BodyForce hanging = first_force({"bell", bell});
    const BodyForce dumbbell = first_force({"dumbbell", Dumbbell{Segment::right_hand, 8.0}});
    CHECK((hanging.point_m - dumbbell.point_m).norm() == 0.0);
    // Held so that it points on beyond the level forearm: 0.12 m further from the elbow.
    bell.follows_hand = true;
    const BodyForce stiff = first_force({"bell", bell});
    CHECK((stiff.point_m - dumbbell.point_m - Vec3(0.12, 0.0, 0.0)).norm() < kRounding);
}

TEST_CASE("A cable pulls with its tension towards the pulley, wherever the hand is",
          "[resistance]") {
    const Vec3 pulley_m(1.0, 2.2, -0.7);
    const BodyForce force = first_force({"cable", Cable{grip(), pulley_m, 120.0}});
    CHECK_THAT(force.force_N.norm(), WithinAbs(120.0, kRounding));
    CHECK(force.force_N.cross(pulley_m - force.point_m).norm() < 1e-6);
    CHECK(force.force_N.dot(pulley_m - force.point_m) > 0.0);
}

TEST_CASE("A column's rope pulls with the stack's weight shared by its parts", "[resistance]") {
    const Vec3 pulley_m(1.0, 2.2, -0.7);
    for (const int ratio : {1, 2, 4}) {
        const CableColumn column{grip(), pulley_m, 20.0, ratio};
        const BodyForce force = first_force({"column", column});
        CHECK_THAT(force.force_N.norm(), WithinAbs(20.0 * kStandardGravity / ratio, kRounding));
        CHECK_THAT(rope_tension(column, 10.0), WithinAbs(200.0 / ratio, kRounding));
    }
    // As the cable that pulls as hard: the stack itself hangs on the column.
    const BodyForce cable =
        first_force({"cable", Cable{grip(), pulley_m, 10.0 * kStandardGravity}});
    const BodyForce half = first_force({"column", CableColumn{grip(), pulley_m, 20.0, 2}});
    CHECK((cable.force_N - half.force_N).norm() < kRounding);
    CHECK(fault_of({"column", CableColumn{grip(), pulley_m, 20.0, 0}}).key.find("rope_ratio") !=
          std::string::npos);
    CHECK(fault_of({"column", CableColumn{grip(), pulley_m, -1.0, 1}}).key.find("stack") !=
          std::string::npos);
}

TEST_CASE("A band pulls by how far it is stretched, and not at all when slack", "[resistance]") {
    Band band{grip(), Vec3(1.5, 1.0, 0.2), 0.8, LinearBand{200.0}};
    CHECK(band_force(band, 0.79).value() == 0.0);
    CHECK(band_force(band, 0.8).value() == 0.0);
    CHECK_THAT(band_force(band, 1.05).value(), WithinAbs(50.0, kRounding));
    // Published points of one level (published-values 6, second hand): 45.4 N at 100 %, and
    // 15.3 lbf = 68.06 N at 200 %; half way between, 56.73 N.
    band.law = TableBand{{{1.0, 45.4}, {2.0, 68.06}}};
    CHECK_THAT(band_force(band, 1.6).value(), WithinAbs(45.4, kRounding));
    CHECK_THAT(band_force(band, 2.0).value(), WithinAbs(56.73, kRounding));
    CHECK_THAT(band_force(band, 1.2).value(), WithinAbs(22.7, kRounding));
    const auto torn = band_force(band, 2.5);
    REQUIRE_FALSE(torn.has_value());
    CHECK(torn.error().key == "law");
    CHECK(torn.error().expected.find("240.0 cm") != std::string::npos);
}

TEST_CASE("A slack band is a force of zero, also when its ends meet", "[resistance]") {
    const BodyForce held = first_force({"dumbbell", Dumbbell{}});
    const BodyForce slack =
        first_force({"band", Band{grip(), held.point_m, 1.0, LinearBand{100.0}}});
    CHECK(slack.force_N.norm() == 0.0);
}

TEST_CASE("A band between two parts of the body pulls both alike", "[resistance]") {
    const Band band{grip(Segment::right_hand), grip(Segment::left_hand), 0.2, LinearBand{300.0}};
    const BodyResult result = solve_body(loaded({"band", band})).value();
    CHECK((result.forces[0].force_N + result.forces[1].force_N).norm() == 0.0);
    // By hand: hands 2 x 0.1295 x 1.75 = 0.45325 m apart.
    CHECK_THAT(result.forces[0].force_N.z(), WithinAbs(-300.0 * 0.25325, kRounding));
    // Nothing of it reaches the trunk's supports.
    CHECK_THAT(result.ground.reaction_N.z(), WithinAbs(0.0, kRounding));
}

TEST_CASE("A machine makes stack times cam radius about its hinge, whatever the limb's pose",
          "[resistance]") {
    PlateMachine machine;
    machine.hinge = Hinge::right_knee_flexion;
    machine.stack_kg = 30.0;
    machine.cam = {{degrees(0), 0.10}, {degrees(90), 0.20}};
    machine.pushes = 1;
    for (const double knee_deg : {0.0, 45.0, 90.0, 120.0}) {
        BodyCase body_case = loaded({"leg extension", machine});
        body_case.pose[Hinge::right_hip_flexion] = degrees(80);
        body_case.pose[Hinge::right_hip_abduction] = degrees(10);
        body_case.pose[Hinge::right_knee_flexion] = degrees(knee_deg);
        const BodyResult result = solve_body(body_case).value();
        // By hand: the cam at 45 degrees is half way, beyond 90 it keeps its last radius.
        const double radius_m = knee_deg >= 90.0 ? 0.20 : 0.10 + 0.10 * knee_deg / 90.0;
        const HingeArm arm = arm_of(result, 0, Hinge::right_knee_flexion);
        CHECK_THAT(arm.torque_Nm, WithinAbs(30.0 * kStandardGravity * radius_m, kRounding));
        // The pad pushes square on the shank: its arm is its distance, 0.9 x 0.246 x 1.75 m.
        CHECK_THAT(arm.arm_m, WithinAbs(0.9 * 0.246 * 1.75, kRounding));
    }
}

TEST_CASE("A partner pushes in the world's direction or along with the limb", "[resistance]") {
    PartnerPush push{grip(), Vec3(0.0, -2.0, 0.0), 40.0, false};
    CHECK((first_force({"push", push}).force_N - Vec3(0.0, -40.0, 0.0)).norm() < kRounding);
    // The hand's own -y points forward once the forearm is level.
    push.follows_segment = true;
    CHECK((first_force({"push", push}).force_N - Vec3(40.0, 0.0, 0.0)).norm() < kRounding);
}

TEST_CASE("A cuff weighs where it is strapped", "[resistance]") {
    const BodyForce force =
        first_force({"cuff", Cuff{{Segment::left_shank, Spot::along, 0.9, Vec3::Zero()}, 3.0}});
    CHECK(force.segment == Segment::left_shank);
    CHECK_THAT(force.force_N.y(), WithinAbs(-3.0 * kStandardGravity, kRounding));
}

TEST_CASE("A weight that is swung pulls by what it must be accelerated", "[resistance]") {
    BodyCase body_case = loaded({"dumbbell", Dumbbell{Segment::right_hand, 4.0}});
    Motion motion;
    const std::size_t elbow = index_of(Hinge::right_elbow_flexion);
    motion.rate_rad_s[elbow] = 2.0;
    motion.acceleration_rad_s2[elbow] = 5.0;
    // By hand, on a level forearm of 0.2555 + 0.0868 m: upward r a, backward r w^2.
    const double radius_m = 0.2555 + 0.0868;
    const Vec3 expected_N = 4.0 * Vec3(4.0 * radius_m, -kStandardGravity - 5.0 * radius_m, 0.0);
    body_case.pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
    const BodyResult result = solve_body(body_case, motion).value();
    CHECK((result.forces[0].force_N - expected_N).norm() < kRounding);
}

TEST_CASE("Several resistances add up", "[resistance]") {
    const Resistance dumbbell{"dumbbell", Dumbbell{Segment::right_hand, 4.0}};
    const Resistance cuff{"cuff",
                          Cuff{{Segment::right_forearm, Spot::along, 0.9, Vec3::Zero()}, 1.0}};
    const auto elbow_Nm = [](const std::vector<Resistance>& resistances) {
        BodyCase body_case = loaded({"none", Dumbbell{Segment::right_hand, 0.0}});
        body_case.resistances = resistances;
        return solve_body(body_case).value().muscle(Hinge::right_elbow_flexion);
    };
    const double none = elbow_Nm({});
    CHECK_THAT(elbow_Nm({dumbbell, cuff}) - none,
               WithinAbs(elbow_Nm({dumbbell}) + elbow_Nm({cuff}) - 2.0 * none, kRounding));
}

TEST_CASE("A resistance that cannot be is refused by its key", "[resistance]") {
    CHECK(fault_of({"x", Dumbbell{Segment::right_hand, -5.0}}).key == "resistances[0].mass");
    CHECK(fault_of({"x", Dumbbell{Segment::right_hand, kNan}}).fault == Fault::not_finite);
    CHECK(fault_of({"x", Dumbbell{Segment::right_foot, 5.0}}).key == "resistances[0].hand");
    CHECK(fault_of({"x", Barbell{1.0e7, std::nullopt}}).fault == Fault::out_of_range);
    CHECK(fault_of({"x", Kettlebell{Segment::right_hand, 8.0, -0.1, false, Vec3::UnitX()}}).key ==
          "resistances[0].offset");
    CHECK(fault_of({"x", Kettlebell{Segment::right_hand, 8.0, 0.1, true, Vec3::Zero()}}).fault ==
          Fault::zero_length);
    CHECK(fault_of({"x", Cuff{{Segment::head, Spot::grip, 0.0, Vec3::Zero()}, 1.0}}).key ==
          "resistances[0].at.segment");
    CHECK(fault_of({"x", Cable{grip(), Vec3(kNan, 0.0, 0.0), 50.0}}).key ==
          "resistances[0].pulley");
    CHECK(fault_of({"x", Cable{grip(), Vec3(1.0, 0.0, 0.0), -50.0}}).key ==
          "resistances[0].tension");
    CHECK(fault_of({"x", Band{grip(), Vec3(1.0, 0.0, 0.0), -0.5, LinearBand{}}}).key ==
          "resistances[0].slack_length");
    CHECK(fault_of({"x", Band{grip(), grip(), 0.5, LinearBand{}}}).key == "resistances[0].anchor");
    CHECK(fault_of({"x", Band{grip(), Vec3(1.0, 0.0, 0.0), 0.5, LinearBand{-1.0}}}).key ==
          "resistances[0].law.stiffness");
    CHECK(fault_of({"x", Band{grip(), Vec3(1.0, 0.0, 0.0), 0.5, TableBand{{}}}}).key ==
          "resistances[0].law");
    CHECK(fault_of(
              {"x", Band{grip(), Vec3(1.0, 0.0, 0.0), 0.5, TableBand{{{1.0, 30.0}, {0.5, 40.0}}}}})
              .key == "resistances[0].law[1]");
    CHECK(fault_of({"x", PartnerPush{grip(), Vec3::Zero(), 50.0, false}}).key ==
          "resistances[0].direction");
    CHECK(fault_of({"x", PartnerPush{grip(), Vec3::UnitX(), kNan, false}}).key ==
          "resistances[0].force");
}

TEST_CASE("A machine that cannot be is refused by its key", "[resistance]") {
    const auto fault_with = [](auto change) {
        PlateMachine machine;
        change(machine);
        return fault_of({"x", machine});
    };
    CHECK(fault_with([](PlateMachine& m) { m.stack_kg = -1.0; }).key == "resistances[0].stack");
    CHECK(fault_with([](PlateMachine& m) { m.cam.clear(); }).key == "resistances[0].cam");
    CHECK(fault_with([](PlateMachine& m) {
              m.cam = {{0.5, 0.1}, {0.2, 0.1}};
          }).key == "resistances[0].cam[1].angle");
    CHECK(fault_with([](PlateMachine& m) {
              m.cam = {{0.5, -0.1}};
          }).key == "resistances[0].cam[0].radius");
    CHECK(fault_with([](PlateMachine& m) { m.pushes = 0; }).key == "resistances[0].pushes");
    CHECK(fault_with([](PlateMachine& m) { m.pad.segment = Segment::right_thigh; }).key ==
          "resistances[0].pad");
    CHECK(fault_with([](PlateMachine& m) { m.pad.along = 0.0; }).key == "resistances[0].pad");
}

TEST_CASE("A pulley in the hand and a band stretched past its table are refused in the pose",
          "[resistance]") {
    const Vec3 hand_m = first_force({"dumbbell", Dumbbell{}}).point_m;
    CHECK(fault_of({"x", Cable{grip(), hand_m, 50.0}}).key == "resistances[0].pulley");
    const MechanicsError torn =
        fault_of({"x", Band{grip(), hand_m + Vec3(4.0, 0.0, 0.0), 1.0, TableBand{{{1.0, 30.0}}}}});
    CHECK(torn.key == "resistances[0].law");
    CHECK(torn.fault == Fault::out_of_range);
}

} // namespace steelyard::mechanics
