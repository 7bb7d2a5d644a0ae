#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/body/solve_body.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// Rounding in sums of torques of a few hundred N·m.
constexpr double kRounding_Nm = 1.0e-10;

/// Two hundred-odd N·m to half of a published value's last printed digit, three decimals.
constexpr double kPrinted_Nm = 0.5e-3;

BodyCase posed(const Body& body, std::initializer_list<std::pair<Hinge, double>> angles_deg) {
    BodyCase body_case = standing(body);
    for (const auto& [hinge, angle_deg] : angles_deg)
        body_case.pose[hinge] = degrees(angle_deg);
    return body_case;
}

/// A body whose whole mass sits at one place of one segment.
Body lumped(Body body, Segment segment, double mass_kg, const Vec3& local_m) {
    for (SegmentBody& each : body.segments) {
        each.mass_kg = 0.0;
        each.inertia_kg_m2.setZero();
    }
    body[segment].mass_kg = mass_kg;
    body[segment].com_m = local_m;
    body.mass_kg = mass_kg;
    return body;
}

/// Moment about a point of everything on the proximal side of a segment's joint, its supports and
/// resistances included.
Vec3 moment_of_other_side(const BodyCase& body_case, const BodyResult& result, Segment distal) {
    const Vec3 about_m = result.placement[distal].joint_m;
    Vec3 moment = Vec3::Zero();
    for (const SegmentInfo& info : all_segments()) {
        if (is_at_or_beyond(info.segment, distal))
            continue;
        const Vec3 weight_N(0.0, -body_case.body[info.segment].mass_kg * body_case.gravity_m_s2,
                            0.0);
        moment += (result.placement[info.segment].com_m - about_m).cross(weight_N);
    }
    for (const BodyForce& force : result.forces)
        if (!is_at_or_beyond(force.segment, distal))
            moment += (force.point_m - about_m).cross(force.force_N) + force.couple_Nm;
    return moment;
}

} // namespace

TEST_CASE("A straight arm held level loads the shoulder and the elbow as derived", "[body]") {
    // published-values 2c: Winter's masses, Drillis & Contini's lengths, 75 kg, 1.75 m:
    // 2.923 + 5.123 + 2.986 = 11.032 N·m at the shoulder, 2.842 N·m at the elbow.
    const BodyResult forward =
        solve_body(posed(winter_body(), {{Hinge::right_shoulder_flexion, 90}})).value();
    CHECK_THAT(forward.muscle(Hinge::right_shoulder_flexion), WithinAbs(11.032, kPrinted_Nm));
    CHECK_THAT(forward.muscle(Hinge::right_elbow_flexion), WithinAbs(2.842, kPrinted_Nm));
    CHECK_THAT(forward.external(Hinge::right_elbow_flexion), WithinAbs(-2.842, kPrinted_Nm));

    const BodyResult sideways =
        solve_body(posed(winter_body(), {{Hinge::left_shoulder_abduction, 90}})).value();
    CHECK_THAT(sideways.muscle(Hinge::left_shoulder_abduction), WithinAbs(11.032, kPrinted_Nm));
    CHECK_THAT(sideways.muscle(Hinge::left_shoulder_flexion), WithinAbs(0.0, kRounding_Nm));
}

TEST_CASE("A level forearm loads the elbow as derived from de Leva's table", "[body]") {
    // published-values 2a: men 1.426 (forearm) + 1.472 (hand) = 2.898 N·m; women 2.106 N·m, whose
    // printed masses add up to 99.99 %, which we bring to 100 %: 0.0002 N·m.
    const BodyResult man =
        solve_body(posed(de_leva_male(), {{Hinge::right_elbow_flexion, 90}})).value();
    CHECK_THAT(man.muscle(Hinge::right_elbow_flexion), WithinAbs(2.898, kPrinted_Nm));
    const Body body = body_from(de_leva(), Sex::female, 1.735, 61.9).value();
    const BodyResult woman = solve_body(posed(body, {{Hinge::right_elbow_flexion, 90}})).value();
    CHECK_THAT(woman.muscle(Hinge::right_elbow_flexion), WithinAbs(2.106, 0.8e-3));
}

TEST_CASE("The trunk's weight loads the low back with the sine of its lean", "[body]") {
    // J Electromyogr Kinesiol 2012;22(6):814–820, Table 2, after Chaffin et al. 1999: 18.34, 34.47
    // and 46.82 N·m at 20, 40 and 60 degrees. Link 26.06 cm, 21.00 kg, g 9.8 (published-values 3f);
    // the 60 degree row does not follow the sine of the other two by 0.8 %.
    Body body = lumped(winter_body(), Segment::trunk, 21.00, Vec3(0.0, 0.2606, 0.0));
    for (const auto& [lean_deg, torque_Nm, tolerance_Nm] :
         {std::tuple(20.0, 18.34, 0.01), std::tuple(40.0, 34.47, 0.01),
          std::tuple(60.0, 46.82, 0.01 * 46.82)}) {
        BodyCase body_case = posed(body, {{Hinge::lumbar_flexion, lean_deg}});
        body_case.gravity_m_s2 = 9.8;
        const BodyResult result = solve_body(body_case).value();
        CHECK_THAT(result.external(Hinge::lumbar_flexion), WithinAbs(torque_Nm, tolerance_Nm));
    }
}

TEST_CASE("Weight makes no torque about a vertical axis", "[body]") {
    // A fact of the trade (common practice): turning the upright trunk under load needs a cable or
    // a band, a weight does not resist it.
    BodyCase body_case = posed(winter_body(), {{Hinge::right_shoulder_flexion, 80},
                                               {Hinge::left_shoulder_abduction, 60},
                                               {Hinge::lumbar_rotation, 25},
                                               {Hinge::neck_rotation, 30}});
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 8.0}}};
    body_case.support = Held{Segment::pelvis};
    const BodyResult result = solve_body(body_case).value();
    CHECK_THAT(result.muscle(Hinge::lumbar_rotation), WithinAbs(0.0, kRounding_Nm));
    CHECK_THAT(result.muscle(Hinge::neck_rotation), WithinAbs(0.0, kRounding_Nm));

    // A cable to the side at hand height does.
    const Vec3 hand_m = result.forces[0].point_m;
    body_case.resistances = {{"cable", Cable{{Segment::right_hand, Spot::grip, 0.0, Vec3::Zero()},
                                             hand_m + Vec3(0.0, 0.0, -2.0),
                                             50.0}}};
    const BodyResult pulled = solve_body(body_case).value();
    // By hand: the pull along -z at the hand's distance in front of the spine.
    CHECK_THAT(std::abs(pulled.muscle(Hinge::lumbar_rotation)), WithinAbs(50.0 * hand_m.x(), 1e-9));
}

TEST_CASE("Bending the elbow takes load off the shoulder in a raise", "[body]") {
    // A fact of the trade (common practice): a bent arm lets a raise take more load.
    const auto shoulder_Nm = [](double elbow_deg) {
        BodyCase body_case = posed(winter_body(), {{Hinge::right_shoulder_abduction, 90},
                                                   {Hinge::right_shoulder_rotation, 90},
                                                   {Hinge::right_elbow_flexion, elbow_deg}});
        body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 5.0}}};
        return solve_body(body_case).value().muscle(Hinge::right_shoulder_abduction);
    };
    CHECK(shoulder_Nm(90.0) < 0.8 * shoulder_Nm(0.0));
    CHECK(shoulder_Nm(0.0) > 11.0);
}

TEST_CASE("A dumbbell in a level hand adds its weight times its distance", "[body]") {
    BodyCase body_case = posed(winter_body(), {{Hinge::right_elbow_flexion, 90}});
    const double empty_Nm = solve_body(body_case).value().muscle(Hinge::right_elbow_flexion);
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 10.0}}};
    const BodyResult result = solve_body(body_case).value();
    // By hand: forearm 0.2555 m + grip 0.0868 m, 98.0665 N.
    CHECK_THAT(result.muscle(Hinge::right_elbow_flexion) - empty_Nm,
               WithinAbs(98.0665 * (0.2555 + 0.0868), 1e-9));
    const HingeArm arm = arm_of(result, 0, Hinge::right_elbow_flexion);
    CHECK_THAT(arm.arm_m, WithinAbs(0.3423, 1e-12));
    CHECK_THAT(arm.force_in_plane_N, WithinAbs(98.0665, 1e-9));
    CHECK(arm.torque_Nm < 0.0);
    CHECK(acts_distally(result.forces[0], Hinge::right_elbow_flexion));
    CHECK_FALSE(acts_distally(result.forces[0], Hinge::left_elbow_flexion));
}

TEST_CASE("External torque is the sum of every arm times its force", "[body]") {
    BodyCase body_case = posed(winter_body(), {{Hinge::right_shoulder_flexion, 50},
                                               {Hinge::right_shoulder_abduction, 30},
                                               {Hinge::right_elbow_flexion, 40},
                                               {Hinge::lumbar_flexion, 20}});
    body_case.resistances = {
        {"dumbbell", Dumbbell{Segment::right_hand, 6.0}},
        {"cable", Cable{{Segment::right_forearm, Spot::along, 0.8, Vec3::Zero()},
                        Vec3(1.5, 0.4, -0.6),
                        70.0}}};
    const BodyResult result = solve_body(body_case).value();
    for (const Hinge hinge :
         {Hinge::right_elbow_flexion, Hinge::right_shoulder_flexion, Hinge::right_shoulder_rotation,
          Hinge::lumbar_flexion, Hinge::lumbar_rotation}) {
        double sum_Nm = weight_arm(body_case, result, hinge).torque_Nm;
        for (std::size_t i = 0; i < result.forces.size(); ++i)
            if (acts_distally(result.forces[i], hinge))
                sum_Nm += arm_of(result, i, hinge).torque_Nm;
        CHECK_THAT(result.external(hinge), WithinAbs(sum_Nm, kRounding_Nm));
    }
}

TEST_CASE("Moving a force along its line of action changes no arm", "[force]") {
    const Vec3 axis = Vec3(0.2, -0.5, 0.9).normalized();
    const Vec3 at_m(0.3, 0.1, -0.2);
    const Vec3 point_m(0.7, 0.9, 0.4);
    const Vec3 force_N(12.0, -50.0, 8.0);
    const HingeArm one = arm_about(at_m, axis, point_m, force_N);
    const HingeArm moved = arm_about(at_m, axis, point_m + 0.037 * force_N, force_N);
    CHECK_THAT(moved.arm_m, WithinAbs(one.arm_m, 1e-12));
    CHECK_THAT(one.arm_m * one.force_in_plane_N, WithinAbs(std::abs(one.torque_Nm), 1e-12));
    // The foot lies an arm away from the joint, square to axis and pull.
    CHECK_THAT((one.foot_m - at_m).norm(), WithinAbs(one.arm_m, 1e-12));
    CHECK_THAT((one.foot_m - at_m).dot(force_N), WithinAbs(0.0, 1e-12));
    CHECK_THAT((one.foot_m - at_m).dot(axis), WithinAbs(0.0, 1e-12));
}

TEST_CASE("A force along the axis or through it has no torque", "[force]") {
    const HingeArm along =
        arm_about(Vec3::Zero(), Vec3::UnitY(), Vec3(0.4, 0.0, 0.1), Vec3(0.0, -30.0, 0.0));
    CHECK(along.arm_m == 0.0);
    CHECK(along.torque_Nm == 0.0);
    const HingeArm through =
        arm_about(Vec3::Zero(), Vec3::UnitZ(), Vec3(0.4, 0.0, 0.1), Vec3(-5.0, 0.0, 2.0));
    CHECK(through.arm_m == 0.0);
    CHECK(through.force_in_plane_N == Approx(5.0));
}

TEST_CASE("Either side of a joint gives the same torque once its supports are counted", "[body]") {
    BodyCase body_case = posed(de_leva_male(), {{Hinge::right_ankle_flexion, 25},
                                                {Hinge::left_ankle_flexion, 25},
                                                {Hinge::right_knee_flexion, 80},
                                                {Hinge::left_knee_flexion, 80},
                                                {Hinge::right_hip_flexion, 95},
                                                {Hinge::left_hip_flexion, 95},
                                                {Hinge::lumbar_flexion, 12},
                                                {Hinge::right_shoulder_flexion, 70}});
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 4.0}}};
    const BodyResult result = solve_body(body_case).value();
    REQUIRE(result.ground.status == BalanceStatus::balanced);
    CHECK(result.leftover_force_N.norm() < 1e-9);
    CHECK(result.leftover_couple_Nm.norm() < 1e-9);
    for (const HingeInfo& info : all_hinges()) {
        CAPTURE(info.name);
        const Vec3 other = moment_of_other_side(body_case, result, joint_info(info.joint).segment);
        CHECK_THAT(result.external(info.hinge),
                   WithinAbs(-other.dot(result.placement.axis(info.hinge)), 1e-9));
    }
}

TEST_CASE("A mirrored pose has mirrored torques", "[body]") {
    BodyCase body_case = posed(winter_body(), {{Hinge::right_shoulder_abduction, 70},
                                               {Hinge::right_elbow_flexion, 50},
                                               {Hinge::left_shoulder_flexion, 40},
                                               {Hinge::lumbar_side_bend, 10},
                                               {Hinge::lumbar_rotation, 15}});
    body_case.resistances = {
        {"dumbbell", Dumbbell{Segment::right_hand, 5.0}},
        {"push", PartnerPush{{Segment::right_forearm, Spot::along, 0.5, Vec3::Zero()},
                             Vec3(0.2, 0.1, -1.0),
                             20.0,
                             false}}};
    BodyCase other = body_case;
    other.pose = mirrored(body_case.pose);
    other.resistances = {
        {"dumbbell", Dumbbell{Segment::left_hand, 5.0}},
        {"push", PartnerPush{{Segment::left_forearm, Spot::along, 0.5, Vec3::Zero()},
                             Vec3(0.2, 0.1, 1.0),
                             20.0,
                             false}}};
    const BodyResult one = solve_body(body_case).value();
    const BodyResult two = solve_body(other).value();
    for (const HingeInfo& info : all_hinges()) {
        CAPTURE(info.name);
        const bool turns_over = info.mirror == info.hinge && info.axis != 2;
        CHECK_THAT(two.muscle(info.mirror),
                   WithinAbs((turns_over ? -1.0 : 1.0) * one.muscle(info.hinge), 1e-9));
    }
}

TEST_CASE("Torque is proportional to gravity, and to height at the same masses", "[body]") {
    const auto torques = [](double height_m, double gravity_m_s2) {
        const Body body = body_from(winter(), Sex::male, height_m, 75.0).value();
        BodyCase body_case =
            posed(body, {{Hinge::right_shoulder_flexion, 65}, {Hinge::lumbar_flexion, 15}});
        body_case.gravity_m_s2 = gravity_m_s2;
        return solve_body(body_case).value().muscle_Nm;
    };
    const PerHinge base = torques(1.6, 9.8);
    const PerHinge tall = torques(2.0, 9.8);
    const PerHinge moon = torques(1.6, 1.62);
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        CHECK_THAT(tall[i], WithinAbs(base[i] * 2.0 / 1.6, kRounding_Nm));
        CHECK_THAT(moon[i], WithinAbs(base[i] * 1.62 / 9.8, kRounding_Nm));
    }
}

TEST_CASE("Swinging a leg like a pendulum costs its inertia", "[body]") {
    // One straight leg about the hip, everything else held: torque = I d2(angle)/dt2 + m g c sin.
    Body body = winter_body();
    BodyCase body_case = posed(body, {{Hinge::right_hip_flexion, 30}});
    body_case.pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
    body_case.support = Held{Segment::pelvis};
    Motion motion;
    motion.acceleration_rad_s2[index_of(Hinge::right_hip_flexion)] = 4.0;
    motion.rate_rad_s[index_of(Hinge::right_hip_flexion)] = 3.0;
    const double at_rest = solve_body(body_case).value().muscle(Hinge::right_hip_flexion);
    const double moving = solve_body(body_case, motion).value().muscle(Hinge::right_hip_flexion);

    double inertia = 0.0;
    const Placement placement = place(body, body_case.pose);
    for (const Segment part :
         {Segment::right_thigh, Segment::right_shank, Segment::right_foot, Segment::right_toes}) {
        const Vec3 arm = placement[part].com_m - placement[Segment::right_thigh].joint_m;
        inertia += body[part].inertia_kg_m2(2, 2) +
                   body[part].mass_kg * (arm.x() * arm.x() + arm.y() * arm.y());
    }
    CHECK_THAT(moving - at_rest, WithinAbs(4.0 * inertia, 1e-9));
}

TEST_CASE("At rest in motion means the same as at rest", "[body]") {
    const BodyCase body_case =
        posed(winter_body(), {{Hinge::right_shoulder_flexion, 45}, {Hinge::lumbar_flexion, 25}});
    const BodyResult still = solve_body(body_case).value();
    const BodyResult moving = solve_body(body_case, Motion{}).value();
    for (std::size_t i = 0; i < kHingeCount; ++i)
        CHECK_THAT(moving.muscle_Nm[i], WithinAbs(still.muscle_Nm[i], kRounding_Nm));
}

TEST_CASE("A body moving freely under its own torques keeps Newton's law as a whole", "[body]") {
    // The ground's force is mass times the acceleration of the centre of mass, plus the weight.
    const Body body = de_leva_male();
    BodyCase body_case = posed(body, {{Hinge::right_knee_flexion, 60},
                                      {Hinge::left_knee_flexion, 60},
                                      {Hinge::right_hip_flexion, 70},
                                      {Hinge::left_hip_flexion, 70},
                                      {Hinge::right_ankle_flexion, 20},
                                      {Hinge::left_ankle_flexion, 20}});
    Motion motion;
    for (const Hinge hinge : {Hinge::right_knee_flexion, Hinge::left_knee_flexion}) {
        motion.rate_rad_s[index_of(hinge)] = -2.0;
        motion.acceleration_rad_s2[index_of(hinge)] = -5.0;
    }
    const BodyResult result = solve_body(body_case, motion).value();
    const double h = 1.0e-4;
    const auto com_at = [&](double t_s) {
        Pose pose = body_case.pose;
        for (std::size_t i = 0; i < kHingeCount; ++i)
            pose.angle_rad[i] +=
                motion.rate_rad_s[i] * t_s + 0.5 * motion.acceleration_rad_s2[i] * t_s * t_s;
        return centre_of_mass(body, place(body, pose));
    };
    const Vec3 acceleration = (com_at(h) - 2.0 * com_at(0.0) + com_at(-h)) / (h * h);
    const Vec3 expected_N = body.mass_kg * (acceleration + Vec3(0.0, body_case.gravity_m_s2, 0.0));
    // Truncation and cancellation of the second difference: about 1e-6 of g times the mass.
    CHECK((result.ground.reaction_N - expected_N).norm() < 1e-2);
}

TEST_CASE("A case that cannot be computed with is refused by its key", "[body]") {
    BodyCase body_case = standing(winter_body());
    body_case.gravity_m_s2 = -9.8;
    CHECK(solve_body(body_case).error().key == "gravity");

    body_case = standing(winter_body());
    body_case.body[Segment::left_shank].mass_kg = std::nan("");
    CHECK(solve_body(body_case).error().key == "body.left_shank");
    CHECK(solve_body(body_case).error().fault == Fault::not_finite);

    body_case = standing(winter_body());
    body_case.resistances.assign(kMaxResistances + 1, {"dumbbell", Dumbbell{}});
    CHECK(solve_body(body_case).error().key == "resistances");

    body_case = standing(winter_body());
    Motion motion;
    motion.rate_rad_s[index_of(Hinge::neck_flexion)] = std::nan("");
    CHECK(solve_body(body_case, motion).error().key == "motion.neck_flexion");
}

} // namespace steelyard::mechanics
