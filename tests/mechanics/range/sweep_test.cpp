#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/range/sweep.h"

#include <cmath>
#include <limits>

namespace steelyard::mechanics {

namespace {

BodyPoint right_grip() {
    return {Segment::right_hand, Spot::grip, 0.0, Vec3::Zero()};
}

/// A curl of the right arm, elbow from straight to bent.
struct Curl {
    BodyCase body_case = standing(winter_body());
    PosePath path;

    explicit Curl(double from_deg = 0.0, double to_deg = 140.0) {
        body_case.pose[Hinge::right_elbow_flexion] = degrees(from_deg);
        path.end_angle_rad = body_case.pose.angle_rad;
        path.end_angle_rad[index_of(Hinge::right_elbow_flexion)] = degrees(to_deg);
    }
};

PosePath to(const BodyCase& body_case, std::initializer_list<std::pair<Hinge, double>> angles_deg) {
    PosePath path{body_case.pose.angle_rad};
    for (const auto& [hinge, angle_deg] : angles_deg)
        path.end_angle_rad[index_of(hinge)] = degrees(angle_deg);
    return path;
}

} // namespace

TEST_CASE("A curl with a weight is hardest when the forearm is level", "[sweep]") {
    Curl curl;
    curl.body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 8.0}}};
    const Sweep curve = sweep(curl.body_case, curl.path, 141).value();
    const HingeSummary elbow =
        summarise(curl.body_case, curl.path, curve, Hinge::right_elbow_flexion);
    CHECK_THAT(elbow.peak_angle_rad, WithinAbs(degrees(90), 1e-9));
    // Every torque follows the sine of the angle (vertical load on a limb that turns about a level
    // axis).
    const auto torque = [&](std::size_t step) {
        return curve.muscle_Nm[step][index_of(Hinge::right_elbow_flexion)];
    };
    for (const std::size_t step : {10u, 45u, 130u})
        CHECK_THAT(torque(step),
                   WithinAbs(elbow.peak_Nm * std::sin(degrees(static_cast<double>(step))), 1e-9));
    CHECK(elbow.zero_crossings.empty());
    CHECK(curve.force_N(90, 0) == Approx(8.0 * kStandardGravity));
    CHECK(curve.arm_m(90, 0, Hinge::right_elbow_flexion) == Approx(0.2555 + 0.0868));
    CHECK(curve.arm_m(90, 0, Hinge::left_elbow_flexion) == 0.0);
    CHECK(curve.time_s[70] == 0.0);
}

TEST_CASE("The work of a lift is the energy of height it gives", "[sweep]") {
    SECTION("a curl with a dumbbell") {
        Curl curl;
        curl.body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 8.0}}};
        const Sweep curve = sweep(curl.body_case, curl.path, 181).value();
        const double gained_J = curve.potential_energy_J.back() - curve.potential_energy_J.front();
        // Simpson's rule on a sine of 140 degrees in 180 steps: below 1e-9 of the work.
        CHECK_THAT(total_work_J(curl.body_case, curl.path, curve), WithinRel(gained_J, 1e-8));
        // By hand for the dumbbell's part: 8 g 0.3423 m (1 - cos 140 degrees).
        CHECK(gained_J > 8.0 * kStandardGravity * 0.3423 * (1.0 - std::cos(degrees(140))));
    }
    SECTION("rising from a squat with a bar across the back") {
        BodyCase body_case = standing(winter_body());
        for (const auto& [hinge, angle_deg] : {std::pair(Hinge::right_ankle_flexion, 25.0),
                                               std::pair(Hinge::right_knee_flexion, 90.0),
                                               std::pair(Hinge::right_hip_flexion, 95.0)}) {
            body_case.pose[hinge] = degrees(angle_deg);
            body_case.pose[hinge_info(hinge).mirror] = degrees(angle_deg);
        }
        body_case.resistances = {
            {"bar", Barbell{40.0, BodyPoint{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}}}};
        const PosePath path{};
        const Sweep curve = sweep(body_case, path, 180).value();
        for (const BalanceStatus status : curve.balance)
            CHECK(status == BalanceStatus::balanced);
        const double gained_J = curve.potential_energy_J.back() - curve.potential_energy_J.front();
        CHECK_THAT(total_work_J(body_case, path, curve), WithinRel(gained_J, 1e-7));
        CHECK(gained_J > 300.0);
    }
}

TEST_CASE("A smooth repetition gives and takes the same work, and only height counts", "[sweep]") {
    Curl curl(0.0, 130.0);
    curl.body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 8.0}}};
    const Tempo tempo{0.6, 0.0, 0.6};
    const Sweep whole = sweep_in_motion(curl.body_case, curl.path, tempo, 601).value();
    // Out and back: nothing gained, and the work of both ways cancels (1e-6 of one way's).
    CHECK_THAT(total_work_J(curl.body_case, curl.path, whole), WithinAbs(0.0, 1e-4));

    // Fast, the start of the way out asks more than holding still does.
    const Sweep slow = sweep(curl.body_case, curl.path, 601).value();
    const auto peak = [&](const Sweep& curve) {
        return summarise(curl.body_case, curl.path, curve, Hinge::right_elbow_flexion).peak_Nm;
    };
    CHECK(peak(whole) > 1.1 * peak(slow));
    // Slow enough, motion does not matter: inertia falls with the square of the time.
    const Sweep crawling =
        sweep_in_motion(curl.body_case, curl.path, {60.0, 0.0, 60.0}, 601).value();
    CHECK_THAT(peak(crawling), WithinRel(peak(slow), 1e-3));
}

TEST_CASE("A tempo is smooth, and holds where it says", "[tempo]") {
    const Tempo tempo{2.0, 1.0, 3.0};
    CHECK(duration_s(tempo) == 6.0);
    CHECK(tempo_state(tempo, 0.0).progress == 0.0);
    // Minimum jerk, by hand: half way at half time with 15/8 of the mean rate.
    CHECK_THAT(tempo_state(tempo, 1.0).progress, WithinAbs(0.5, 1e-15));
    CHECK_THAT(tempo_state(tempo, 1.0).rate_1_s, WithinAbs(15.0 / 8.0 / 2.0, 1e-15));
    CHECK_THAT(tempo_state(tempo, 1.0).acceleration_1_s2, WithinAbs(0.0, 1e-15));
    // A quarter of the time: 10/64 - 15/256 + 6/1024 = 106/1024.
    CHECK_THAT(tempo_state(tempo, 0.5).progress, WithinAbs(106.0 / 1024.0, 1e-15));
    CHECK(tempo_state(tempo, 2.5).progress == 1.0);
    CHECK(tempo_state(tempo, 2.5).rate_1_s == 0.0);
    CHECK_THAT(tempo_state(tempo, 4.5).progress, WithinAbs(0.5, 1e-15));
    CHECK(tempo_state(tempo, 4.5).rate_1_s < 0.0);
    CHECK(tempo_state(tempo, 9.0).progress == 0.0);
    CHECK(tempo_state(tempo, -1.0).progress == 0.0);
    // Rate and acceleration are the derivatives (central differences, truncation below 1e-6).
    const double h = 1e-4;
    for (const double t : {0.3, 1.7, 3.6, 5.1}) {
        const TempoState before = tempo_state(tempo, t - h);
        const TempoState after = tempo_state(tempo, t + h);
        CHECK_THAT(tempo_state(tempo, t).rate_1_s,
                   WithinAbs((after.progress - before.progress) / (2 * h), 1e-6));
        CHECK_THAT(tempo_state(tempo, t).acceleration_1_s2,
                   WithinAbs((after.rate_1_s - before.rate_1_s) / (2 * h), 1e-6));
    }
}

TEST_CASE("The torque of a limb that swings through the vertical changes sign there", "[sweep]") {
    BodyCase body_case = standing(winter_body());
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(-40);
    const PosePath path = to(body_case, {{Hinge::right_shoulder_flexion, 60.0}});
    const Sweep curve = sweep(body_case, path, 101).value();
    const HingeSummary shoulder = summarise(body_case, path, curve, Hinge::right_shoulder_flexion);
    REQUIRE(shoulder.zero_crossings.size() == 1);
    CHECK_THAT(shoulder.zero_crossings[0], WithinAbs(0.4, 1e-9));
    CHECK(shoulder.least_Nm < 1e-9);
}

TEST_CASE("A cable's hardest point is where it pulls square on the limb", "[sweep]") {
    // Against a dumbbell, whose hardest point is a level arm, a low pulley in front moves it.
    BodyCase body_case = standing(winter_body());
    body_case.support = Held{Segment::pelvis};
    const PosePath path = to(body_case, {{Hinge::right_shoulder_flexion, 170.0}});
    body_case.resistances = {{"cable", Cable{right_grip(), Vec3(1.2, 0.2, 0.2), 100.0}}};
    const Sweep curve = sweep(body_case, path, 171).value();
    std::size_t longest = 0;
    for (std::size_t step = 0; step < curve.steps; ++step)
        if (curve.arm_m(step, 0, Hinge::right_shoulder_flexion) >
            curve.arm_m(longest, 0, Hinge::right_shoulder_flexion))
            longest = step;
    BodyCase at_longest = body_case;
    at_longest.pose = pose_at(body_case.pose, path, curve.progress[longest]);
    const BodyResult result = solve_body(at_longest).value();
    const Vec3 limb =
        result.forces[0].point_m - result.placement.axis_point_m(Hinge::right_shoulder_flexion);
    const Vec3 pull = result.forces[0].force_N;
    const Vec3 flat_limb(limb.x(), limb.y(), 0.0);
    const Vec3 flat_pull(pull.x(), pull.y(), 0.0);
    // Square to within the one degree of a step.
    CHECK(std::abs(flat_limb.dot(flat_pull)) < 0.02 * flat_limb.norm() * flat_pull.norm());
}

TEST_CASE("A band is light at first and heavy at the end, where a weight is not", "[sweep]") {
    Curl curl(10.0, 140.0);
    curl.body_case.resistances = {
        {"band", Band{right_grip(), BodyPoint{Segment::right_foot, Spot::sole, 0.0, Vec3::Zero()},
                      0.85, LinearBand{150.0}}}};
    const Sweep curve = sweep(curl.body_case, curl.path, 131).value();
    CHECK(curve.force_N(0, 0) < curve.force_N(130, 0));
    for (std::size_t step = 1; step < curve.steps; ++step)
        CHECK(curve.force_N(step, 0) >= curve.force_N(step - 1, 0));
}

TEST_CASE("A barbell's arm about the low back is that of both hands together", "[sweep]") {
    BodyCase body_case = standing(winter_body());
    for (const Hinge hinge : {Hinge::right_shoulder_flexion, Hinge::left_shoulder_flexion})
        body_case.pose[hinge] = degrees(60);
    body_case.resistances = {{"bar", Barbell{20.0, std::nullopt}}};
    const PosePath path = to(body_case, {{Hinge::lumbar_flexion, 10.0}});
    const Sweep curve = sweep(body_case, path, 3).value();
    CHECK_THAT(curve.force_N(0, 0), WithinAbs(20.0 * kStandardGravity, 1e-9));
    const BodyResult result = solve_body(body_case).value();
    CHECK_THAT(curve.arm_m(0, 0, Hinge::lumbar_flexion),
               WithinAbs(arm_of(result, 0, Hinge::lumbar_flexion).arm_m, 1e-12));
    CHECK_THAT(curve.arm_m(0, 0, Hinge::left_shoulder_flexion),
               WithinAbs(arm_of(result, 1, Hinge::left_shoulder_flexion).arm_m, 1e-12));
}

TEST_CASE("A sweep that cannot be is refused by its key", "[sweep]") {
    Curl curl;
    CHECK(sweep(curl.body_case, curl.path, 1).error().key == "steps");
    Curl bent(0.0, 200.0);
    CHECK(sweep(bent.body_case, bent.path, 10).error().key == "end.pose.right_elbow_flexion");
    CHECK(sweep_in_motion(curl.body_case, curl.path, {0.0, 0.0, 1.0}, 10).error().key ==
          "tempo.out");
    CHECK(sweep_in_motion(curl.body_case, curl.path,
                          {1.0, std::numeric_limits<double>::quiet_NaN(), 1.0}, 10)
              .error()
              .fault == Fault::not_finite);
    // A cable whose pulley the hand meets on the way.
    BodyCase body_case = curl.body_case;
    const Pose middle = pose_at(body_case.pose, curl.path, 0.5);
    BodyCase probe = body_case;
    probe.pose = middle;
    probe.resistances = {{"dumbbell", Dumbbell{}}};
    const Vec3 hand_m = solve_body(probe).value().forces[0].point_m;
    body_case.resistances = {{"cable", Cable{right_grip(), hand_m, 50.0}}};
    CHECK(sweep(body_case, curl.path, 11).error().key == "resistances[0].pulley");
}

} // namespace steelyard::mechanics
