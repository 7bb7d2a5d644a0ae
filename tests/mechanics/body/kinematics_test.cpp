#include "catch.h"
#include "mechanics/body/kinematics.h"
#include "mechanics/body/published_tables.h"

namespace steelyard::mechanics {

namespace {

/// A distance that rounding may leave in a chain of ten turns [m].
constexpr double kRounding_m = 1.0e-12;

Pose with(std::initializer_list<std::pair<Hinge, double>> angles_deg) {
    Pose pose;
    for (const auto& [hinge, angle_deg] : angles_deg)
        pose[hinge] = degrees(angle_deg);
    return pose;
}

/// Where a point of a segment ends up, seen from where it is in the zero position.
Vec3 shift_of(Segment segment, const Pose& pose) {
    const Body body = winter_body();
    Pose still = pose;
    still.angle_rad.fill(0.0);
    const Vec3 tip_m = body[segment].tip_m;
    return place(body, pose)[segment].at(tip_m) - place(body, still)[segment].at(tip_m);
}

} // namespace

TEST_CASE("Positive angles move the parts the way their names say", "[kinematics]") {
    // x forward, y up, z to the right; README.md has the same table in words.
    CHECK(shift_of(Segment::head, with({{Hinge::lumbar_flexion, 20}})).x() > 0.0);
    CHECK(shift_of(Segment::head, with({{Hinge::lumbar_side_bend, 20}})).z() > 0.0);
    CHECK(shift_of(Segment::head, with({{Hinge::neck_flexion, 20}})).x() > 0.0);
    CHECK(shift_of(Segment::head, with({{Hinge::neck_side_bend, 20}})).z() > 0.0);
    // Turning right brings the left arm forward.
    CHECK(shift_of(Segment::left_hand, with({{Hinge::lumbar_rotation, 20}})).x() > 0.0);
    for (const bool right : {true, false}) {
        const double outward = right ? 1.0 : -1.0;
        const auto side = [&](Hinge hinge) { return right ? hinge : hinge_info(hinge).mirror; };
        const auto part = [&](Segment s) { return right ? s : segment_info(s).mirror; };
        const auto moved = [&](Segment segment, Hinge hinge, double angle_deg = 20) {
            return shift_of(part(segment), with({{side(hinge), angle_deg}}));
        };
        CHECK(moved(Segment::right_hand, Hinge::right_girdle_protraction).x() > 0.0);
        CHECK(moved(Segment::right_upper_arm, Hinge::right_girdle_elevation).y() > 0.0);
        CHECK(moved(Segment::right_hand, Hinge::right_girdle_rotation).x() > 0.0);
        CHECK(moved(Segment::right_hand, Hinge::right_shoulder_flexion).x() > 0.0);
        CHECK(moved(Segment::right_hand, Hinge::right_shoulder_abduction).z() * outward > 0.0);
        CHECK(moved(Segment::right_hand, Hinge::right_elbow_flexion).x() > 0.0);
        CHECK(moved(Segment::right_hand, Hinge::right_wrist_flexion).x() > 0.0);
        CHECK(moved(Segment::right_hand, Hinge::right_wrist_deviation).z() * outward > 0.0);
        // Internal rotation brings the bent forearm across the belly.
        const Pose bent = with(
            {{side(Hinge::right_elbow_flexion), 90}, {side(Hinge::right_shoulder_rotation), 20}});
        const Pose straight = with({{side(Hinge::right_elbow_flexion), 90}});
        const Body body = winter_body();
        const Segment hand = part(Segment::right_hand);
        CHECK((place(body, bent)[hand].joint_m - place(body, straight)[hand].joint_m).z() *
                  outward <
              0.0);
    }
}

TEST_CASE("Legs move the way their names say when the pelvis is held", "[kinematics]") {
    const Body body = winter_body();
    const auto moved = [&](Segment segment, Hinge hinge, double angle_deg) {
        Pose pose = with({{hinge, angle_deg}});
        pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
        Pose still;
        still.anchor = pose.anchor;
        const Vec3 tip_m = body[segment].tip_m;
        return Vec3(place(body, pose)[segment].at(tip_m) - place(body, still)[segment].at(tip_m));
    };
    CHECK(moved(Segment::right_shank, Hinge::right_hip_flexion, 20).x() > 0.0);
    CHECK(moved(Segment::right_shank, Hinge::right_hip_abduction, 20).z() > 0.0);
    CHECK(moved(Segment::left_shank, Hinge::left_hip_abduction, 20).z() < 0.0);
    CHECK(moved(Segment::right_toes, Hinge::right_hip_rotation, 20).z() < 0.0);
    CHECK(moved(Segment::left_toes, Hinge::left_hip_rotation, 20).z() > 0.0);
    CHECK(moved(Segment::right_shank, Hinge::right_knee_flexion, 20).x() < 0.0);
    CHECK(moved(Segment::right_toes, Hinge::right_ankle_flexion, 20).y() > 0.0);
    CHECK(moved(Segment::right_toes, Hinge::right_toe_extension, 20).y() > 0.0);
    // Inversion turns the sole to the other foot: the foot's underside moves inward.
    CHECK(moved(Segment::right_foot, Hinge::right_ankle_inversion, 20).z() < 0.0);
    CHECK(moved(Segment::left_foot, Hinge::left_ankle_inversion, 20).z() > 0.0);
}

TEST_CASE("The anchored point and segment stay where the setup puts them", "[kinematics]") {
    const Body body = de_leva_male();
    Pose pose = with({{Hinge::left_hip_flexion, 70},
                      {Hinge::left_hip_rotation, 15},
                      {Hinge::left_knee_flexion, 80},
                      {Hinge::left_ankle_flexion, 12},
                      {Hinge::lumbar_flexion, 30}});
    pose.anchor.point = {Segment::left_foot, Spot::ball, 0.0, Vec3::Zero()};
    pose.anchor.at_m = Vec3(0.4, 0.1, -0.3);
    const Placement placement = place(body, pose);
    const Vec3 ball_m = placement[Segment::left_foot].at(*local_point(body, pose.anchor.point));
    CHECK((ball_m - pose.anchor.at_m).norm() < kRounding_m);
    CHECK((placement[Segment::left_foot].rotation - Mat3::Identity()).norm() < kRounding_m);
}

TEST_CASE("A squat with a flat foot moves the hips back and down", "[kinematics]") {
    // By hand, thigh and shank of Winter's body: shank 0.4305 m leaning forward 20 degrees, thigh
    // 0.42875 m leaning back 90 - 20 = 70 degrees.
    const Body body = winter_body();
    const Pose pose = with({{Hinge::right_ankle_flexion, 20},
                            {Hinge::right_knee_flexion, 90},
                            {Hinge::right_hip_flexion, 100}});
    const Placement placement = place(body, pose);
    const Vec3 hip_m = placement[Segment::right_thigh].joint_m;
    const Vec3 ankle_m = placement[Segment::right_foot].joint_m;
    CHECK_THAT(hip_m.x() - ankle_m.x(),
               WithinAbs(0.4305 * std::sin(degrees(20)) - 0.42875 * std::sin(degrees(70)), 1e-12));
    CHECK_THAT(hip_m.y() - ankle_m.y(),
               WithinAbs(0.4305 * std::cos(degrees(20)) + 0.42875 * std::cos(degrees(70)), 1e-12));
    // 100 degrees between trunk and thigh, thigh at 70 from upright: trunk leans forward 30.
    const Vec3 up = placement[Segment::pelvis].rotation.col(1);
    CHECK_THAT(std::atan2(up.x(), up.y()), WithinAbs(degrees(30), 1e-12));
}

TEST_CASE("At ninety degrees of flexion abduction swings the arm horizontally", "[kinematics]") {
    const Body body = winter_body();
    const Pose pose =
        with({{Hinge::right_shoulder_flexion, 90}, {Hinge::right_shoulder_abduction, 40}});
    const Placement placement = place(body, pose);
    const Vec3 arm =
        placement[Segment::right_forearm].joint_m - placement[Segment::right_upper_arm].joint_m;
    CHECK_THAT(arm.y(), WithinAbs(0.0, kRounding_m));
    CHECK_THAT(std::atan2(arm.z(), arm.x()), WithinAbs(degrees(40), 1e-12));
    CHECK((placement.axis(Hinge::right_shoulder_abduction).cross(Vec3::UnitY())).norm() < 1e-12);
}

TEST_CASE("Velocities and accelerations are the derivatives of the places", "[kinematics]") {
    // Second and fourth order differences of exact kinematics; tolerances from their truncation.
    const Body body = de_leva_male();
    Pose start;
    Motion motion;
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        const double k = static_cast<double>(i);
        start.angle_rad[i] = 0.3 * std::sin(1.7 * k);
        motion.rate_rad_s[i] = std::sin(0.9 * k + 0.4);
        motion.acceleration_rad_s2[i] = 2.0 * std::cos(1.3 * k);
    }
    start.anchor.point = {Segment::left_foot, Spot::heel, 0.0, Vec3::Zero()};
    const auto at = [&](double t_s) {
        Pose pose = start;
        for (std::size_t i = 0; i < kHingeCount; ++i)
            pose.angle_rad[i] +=
                motion.rate_rad_s[i] * t_s + 0.5 * motion.acceleration_rad_s2[i] * t_s * t_s;
        return place(body, pose);
    };
    const double h = 1.0e-4;
    const Placement before = at(-h);
    const Placement now = at(0.0);
    const Placement after = at(h);
    const BodyMotion moving = move(start, now, motion);
    for (std::size_t i = 0; i < kSegmentCount; ++i) {
        CAPTURE(all_segments()[i].name);
        const Vec3 velocity = (after.segments[i].joint_m - before.segments[i].joint_m) / (2.0 * h);
        const Vec3 com_acceleration =
            (after.segments[i].com_m - 2.0 * now.segments[i].com_m + before.segments[i].com_m) /
            (h * h);
        CHECK((velocity - moving[i].joint_velocity_m_s).norm() < 1e-6);
        CHECK(
            (com_acceleration - acceleration_at(now.segments[i], moving[i], now.segments[i].com_m))
                .norm() < 1e-5);
        const Mat3 spin = (after.segments[i].rotation - before.segments[i].rotation) / (2.0 * h) *
                          now.segments[i].rotation.transpose();
        const Vec3 rate(spin(2, 1), spin(0, 2), spin(1, 0));
        CHECK((rate - moving[i].angular_velocity_rad_s).norm() < 1e-6);
    }
}

TEST_CASE("Mirroring a pose twice gives it back, and once mirrors every place", "[kinematics]") {
    const Body body = winter_body();
    Pose pose = with({{Hinge::lumbar_side_bend, 12},
                      {Hinge::lumbar_rotation, -20},
                      {Hinge::right_shoulder_abduction, 60},
                      {Hinge::right_forearm_rotation, 90},
                      {Hinge::left_hip_rotation, 10}});
    pose.anchor.turn_rad = 0.3;
    pose.anchor.at_m = Vec3(0.1, 0.0, 0.2);
    const Pose twice = mirrored(mirrored(pose));
    CHECK(twice.angle_rad == pose.angle_rad);
    const Placement one = place(body, pose);
    const Placement other = place(body, mirrored(pose));
    for (const SegmentInfo& info : all_segments()) {
        const Vec3 a = one[info.segment].com_m;
        const Vec3 b = other[info.mirror].com_m;
        CHECK((Vec3(a.x(), a.y(), -a.z()) - b).norm() < kRounding_m);
    }
}

TEST_CASE("An angle outside its range is refused with the range", "[pose]") {
    const Body body = winter_body();
    Pose pose = with({{Hinge::right_knee_flexion, 170}});
    auto checked = check_pose(body, pose);
    REQUIRE_FALSE(checked.has_value());
    CHECK(checked.error().fault == Fault::out_of_range);
    CHECK(checked.error().key == "pose.right_knee_flexion");
    CHECK(checked.error().expected == "an angle from -10 to 150 degrees (flexion positive)");
    pose = with({{Hinge::left_elbow_flexion, std::nan("")}});
    CHECK(check_pose(body, pose).error().fault == Fault::not_finite);
    pose = with({{Hinge::left_elbow_flexion, 150}});
    CHECK(check_pose(body, pose).has_value());
    pose.anchor.at_m.x() = std::numeric_limits<double>::infinity();
    CHECK(check_pose(body, pose).error().key == "pose.anchor.at");
    pose = Pose{};
    pose.anchor.point = {Segment::head, Spot::sole, 0.0, Vec3::Zero()};
    CHECK(check_pose(body, pose).error().key == "pose.anchor.segment");
}

} // namespace steelyard::mechanics
