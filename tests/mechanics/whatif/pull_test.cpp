#include "catch.h"
#include "mechanics/body/kinematics.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/whatif/boathouse_exercises.h"
#include "mechanics/whatif/pull.h"

#include <algorithm>

namespace steelyard::mechanics {

namespace {

const BodyPoint kGrip{Segment::right_hand, Spot::grip, 0.0, Vec3::Zero()};

BodyPoint joint_point(Segment segment) {
    return {segment, Spot::along, 0.0, Vec3::Zero()};
}

Vec3 place_of(const Exercise& exercise, const BodyPoint& point, double progress = 0.0) {
    const Pose pose = exercise.path ? pose_at(exercise.body_case.pose, *exercise.path, progress)
                                    : exercise.body_case.pose;
    return place(exercise.body_case.body, pose)[point.segment].at(
        local_point(exercise.body_case.body, point).value());
}

std::vector<Hinge> names(const std::vector<FreeHinge>& hinges) {
    std::vector<Hinge> found;
    for (const FreeHinge& free : hinges)
        found.push_back(free.hinge);
    return found;
}

/// A squat on both feet with a bar on the back.
Exercise squat() {
    Exercise exercise;
    exercise.body_case = standing(winter_body());
    exercise.body_case.resistances = {
        {"bar", Barbell{40.0, BodyPoint{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}}}};
    exercise.path = PosePath{exercise.body_case.pose.angle_rad};
    for (const auto& [hinge, angle_deg] :
         {std::pair(Hinge::right_hip_flexion, 95.0), std::pair(Hinge::right_knee_flexion, 95.0),
          std::pair(Hinge::right_ankle_flexion, 28.0)})
        for (const Hinge side : {hinge, hinge_info(hinge).mirror})
            exercise.path->end_angle_rad[index_of(side)] = degrees(angle_deg);
    return exercise;
}

} // namespace

TEST_CASE("The joints of the limb follow what is pulled", "[pull]") {
    using List = std::vector<Hinge>;
    CHECK(names(hinges_that_follow(curl(), {kGrip})) ==
          List{Hinge::right_elbow_flexion, Hinge::right_shoulder_flexion});
    CHECK(names(hinges_that_follow(curl(), {joint_point(Segment::right_forearm)})) ==
          List{Hinge::right_shoulder_flexion});
    CHECK(names(hinges_that_follow(squat(), {joint_point(Segment::right_thigh)})) ==
          List{Hinge::right_knee_flexion, Hinge::right_ankle_flexion});
    CHECK(names(hinges_that_follow(squat(), {joint_point(Segment::right_shank)})) ==
          List{Hinge::right_ankle_flexion});
    const BodyPoint back{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()};
    CHECK(names(hinges_that_follow(squat(), {back})) == List{Hinge::right_hip_flexion});
    // The ankle of a standing foot cannot go anywhere.
    CHECK(hinges_that_follow(squat(), {joint_point(Segment::right_foot)}).empty());
}

TEST_CASE("Both limbs follow only where both work and are held alike", "[pull]") {
    for (const FreeHinge& free : hinges_that_follow(curl(), {kGrip}))
        CHECK_FALSE(free.with_mirror); // one dumbbell
    for (const FreeHinge& free : hinges_that_follow(stoop(), {kGrip}))
        CHECK(free.with_mirror); // one in each hand
    for (const FreeHinge& free : hinges_that_follow(squat(), {joint_point(Segment::right_thigh)}))
        CHECK(free.with_mirror);
}

TEST_CASE("A pulled hand comes to the place, and the path keeps its way", "[pull]") {
    const Exercise before = curl();
    const double progress = 0.4;
    const Vec3 to_m = place_of(before, kGrip, progress) + Vec3(0.05, 0.04, 0.0);
    const auto after = pulled(before, {kGrip, to_m, Vec3::UnitZ(), progress});
    REQUIRE(after);
    // kReached_m, a hundredth of a millimetre, is what the search leaves.
    CHECK((place_of(*after, kGrip, progress) - to_m).norm() < 2.0 * kReached_m);
    for (std::size_t i = 0; i < kHingeCount; ++i)
        CHECK(after->path->end_angle_rad[i] - after->body_case.pose.angle_rad[i] ==
              Approx(before.path->end_angle_rad[i] - before.body_case.pose.angle_rad[i]));
}

TEST_CASE("No pull takes a joint out of its range anywhere on the path", "[pull]") {
    for (const Exercise& exercise : {curl(), stoop(), squat()})
        for (const BodyPoint& point :
             {kGrip, joint_point(Segment::right_forearm), joint_point(Segment::right_thigh),
              joint_point(Segment::right_shank), joint_point(Segment::right_upper_arm)})
            for (const Vec3& far_m : {Vec3(3, 0, 0), Vec3(-3, 1, 0), Vec3(0, 3, 0), Vec3(1, -3, 0)})
                for (const double progress : {0.0, 0.5, 1.0}) {
                    const auto after = pulled(exercise, {point, far_m, Vec3::UnitZ(), progress});
                    REQUIRE(after);
                    CHECK(check_pose(after->body_case.body, after->body_case.pose));
                    if (!after->path)
                        continue;
                    CHECK(check_pose(after->body_case.body,
                                     pose_at(after->body_case.pose, *after->path, 1.0)));
                }
}

TEST_CASE("The trunk stays as upright as it was when the hip is pulled down", "[pull]") {
    const Exercise before = squat();
    const BodyPoint hip = joint_point(Segment::right_thigh);
    const double progress = 0.3;
    const auto rotation = [&](const Exercise& exercise, Segment segment) {
        return place(exercise.body_case.body,
                     pose_at(exercise.body_case.pose, *exercise.path, progress))[segment]
            .rotation;
    };
    const Vec3 to_m = place_of(before, hip, progress) + Vec3(-0.03, -0.06, 0.0);
    const auto after = pulled(before, {hip, to_m, Vec3::UnitZ(), progress});
    REQUIRE(after);
    CHECK((place_of(*after, hip, progress) - to_m).head<2>().norm() < 2.0 * kReached_m);
    // Rounding only: the hips turn back exactly what knees and ankles turned.
    CHECK((rotation(*after, Segment::trunk) - rotation(before, Segment::trunk)).norm() < 1e-9);
    // Both feet stay on the floor.
    for (const Segment foot : {Segment::right_foot, Segment::left_foot})
        CHECK((rotation(*after, foot) - rotation(before, foot)).norm() < 1e-9);
}

TEST_CASE("Arms that hold something keep hanging when the trunk is bent", "[pull]") {
    Exercise before = stoop();
    before.body_case.support = OnContacts{};
    before.body_case.pose.anchor = {};
    const BodyPoint shoulder = joint_point(Segment::right_upper_arm);
    const Vec3 to_m = place_of(before, shoulder) + Vec3(0.1, -0.1, 0.0);
    const auto after = pulled(before, {shoulder, to_m, Vec3::UnitZ(), 0.0});
    REQUIRE(after);
    const auto arm = [](const Exercise& exercise) {
        return place(exercise.body_case.body, exercise.body_case.pose)[Segment::right_forearm]
            .rotation;
    };
    CHECK((arm(*after) - arm(before)).norm() < 1e-9);
    CHECK(after->body_case.pose[Hinge::right_hip_flexion] !=
          before.body_case.pose[Hinge::right_hip_flexion]);
}

} // namespace steelyard::mechanics
