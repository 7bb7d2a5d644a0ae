#include "catch.h"
#include "mechanics/body/kinematics.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/range/inverse_kinematics.h"
#include "mechanics/range/random.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

namespace {

const BodyPoint kGrip{Segment::right_hand, Spot::grip, 0.0, Vec3::Zero()};
const BodyPoint kHip{Segment::right_thigh, Spot::along, 0.0, Vec3::Zero()};

FreeHinge whole_range(Hinge hinge, bool with_mirror = false) {
    return {hinge, with_mirror, {hinge_info(hinge).least_rad, hinge_info(hinge).most_rad}};
}

/// A seated body whose arm moves in the sagittal plane: upper arm and forearm with hand are a
/// linkage of two links.
struct SeatedArm {
    Body body = winter_body();
    Pose pose;
    std::vector<FreeHinge> hinges{whole_range(Hinge::right_shoulder_flexion),
                                  whole_range(Hinge::right_elbow_flexion)};

    SeatedArm() {
        pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
        pose[Hinge::right_elbow_flexion] = degrees(40);
        pose[Hinge::right_shoulder_flexion] = degrees(20);
    }
    Vec3 joint_m(const Pose& at, Hinge hinge) const { return place(body, at).axis_point_m(hinge); }
    Vec3 grip_m(const Pose& at) const {
        return place(body, at)[Segment::right_hand].at(local_point(body, kGrip).value());
    }
    Vec3 shoulder_m() const { return joint_m(pose, Hinge::right_shoulder_flexion); }
    double upper_m() const {
        return (joint_m(pose, Hinge::right_elbow_flexion) - shoulder_m()).norm();
    }
    double lower_m() const {
        return (grip_m(pose) - joint_m(pose, Hinge::right_elbow_flexion)).norm();
    }
    /// A place in the arm's plane, from the shoulder forward and up.
    Vec3 from_shoulder_m(double forward_m, double up_m) const {
        Vec3 place_m = grip_m(pose);
        place_m.x() = shoulder_m().x() + forward_m;
        place_m.y() = shoulder_m().y() + up_m;
        return place_m;
    }
};

double angle_between(const Vec3& one, const Vec3& other) {
    return std::acos(std::clamp(one.normalized().dot(other.normalized()), -1.0, 1.0));
}

} // namespace

// Source of the closed form: law of cosines; Craig, Introduction to Robotics, 3rd ed., section 4.4,
// the arm of two links (from memory): cos θ₂ = (x² + y² - l₁² - l₂²) / (2 l₁ l₂).
TEST_CASE("An arm reaches a place by the closed form of two links", "[inverse-kinematics]") {
    const SeatedArm arm;
    for (const auto& [forward_m, up_m] :
         {std::pair(0.35, -0.30), std::pair(0.20, -0.20), std::pair(0.45, 0.10),
          std::pair(0.10, 0.35), std::pair(0.50, -0.10)}) {
        const ReachGoal goal{kGrip, arm.from_shoulder_m(forward_m, up_m), Vec3::UnitZ()};
        const auto reached = reach_point(arm.body, arm.pose, goal, arm.hinges);
        REQUIRE(reached);
        CHECK(reached->miss_m < kReached_m);
        const double cosine = (forward_m * forward_m + up_m * up_m - arm.upper_m() * arm.upper_m() -
                               arm.lower_m() * arm.lower_m()) /
                              (2.0 * arm.upper_m() * arm.lower_m());
        const Vec3 elbow_m = arm.joint_m(reached->pose, Hinge::right_elbow_flexion);
        const double bend_rad =
            angle_between(elbow_m - arm.shoulder_m(), arm.grip_m(reached->pose) - elbow_m);
        // A miss of kReached_m turns links of a third of a metre by a few times 3e-5 rad.
        CHECK(bend_rad == Approx(std::acos(cosine)).margin(2.0e-4));
    }
}

TEST_CASE("A place beyond an arm's length is pointed at with a straight arm",
          "[inverse-kinematics]") {
    const SeatedArm arm;
    const Vec3 target_m = arm.from_shoulder_m(1.2, 0.3);
    const auto reached =
        reach_point(arm.body, arm.pose, {kGrip, target_m, Vec3::UnitZ()}, arm.hinges);
    REQUIRE(reached);
    const double length_m = arm.upper_m() + arm.lower_m();
    CHECK(reached->miss_m == Approx(std::hypot(1.2, 0.3) - length_m).margin(1.0e-4));
    const Vec3 span_m = arm.grip_m(reached->pose) - arm.shoulder_m();
    CHECK(std::atan2(span_m.y(), span_m.x()) == Approx(std::atan2(0.3, 1.2)).margin(1.0e-3));
}

TEST_CASE("A joint stops at the end of its range", "[inverse-kinematics]") {
    SeatedArm arm;
    // The shoulder alone can swing back by 60 degrees; the target asks for more.
    const auto reached =
        reach_point(arm.body, arm.pose, {kGrip, arm.from_shoulder_m(-0.9, 0.2), Vec3::UnitZ()},
                    {whole_range(Hinge::right_shoulder_flexion)});
    REQUIRE(reached);
    CHECK(reached->pose[Hinge::right_shoulder_flexion] == Approx(degrees(-60)).margin(1.0e-9));
    CHECK(reached->pose[Hinge::right_elbow_flexion] == arm.pose[Hinge::right_elbow_flexion]);
}

TEST_CASE("A straight arm that is pulled along itself bends", "[inverse-kinematics]") {
    SeatedArm arm;
    arm.pose[Hinge::right_elbow_flexion] = 0.0;
    arm.pose[Hinge::right_shoulder_flexion] = 0.0;
    const auto reached = reach_point(
        arm.body, arm.pose, {kGrip, arm.from_shoulder_m(0.0, -0.4), Vec3::UnitZ()}, arm.hinges);
    REQUIRE(reached);
    CHECK(reached->miss_m < kReached_m);
}

TEST_CASE("Both legs bend alike when the hip is pulled down over planted feet",
          "[inverse-kinematics]") {
    const BodyCase standing_case = standing(winter_body());
    Pose pose = standing_case.pose;
    for (const Hinge hinge : {Hinge::right_knee_flexion, Hinge::left_knee_flexion})
        pose[hinge] = degrees(10);
    const Placement before = place(standing_case.body, pose);
    const Vec3 target_m = before[Segment::right_thigh].joint_m + Vec3(-0.15, -0.25, 0.0);
    const auto reached = reach_point(standing_case.body, pose, {kHip, target_m, Vec3::UnitZ()},
                                     {whole_range(Hinge::right_knee_flexion, true),
                                      whole_range(Hinge::right_ankle_flexion, true)});
    REQUIRE(reached);
    CHECK(reached->miss_m < kReached_m);
    CHECK(reached->pose[Hinge::left_knee_flexion] ==
          Approx(reached->pose[Hinge::right_knee_flexion]));
    const Placement after = place(standing_case.body, reached->pose);
    // Both feet stay where they were: what is left is rounding.
    CHECK((after[Segment::left_foot].joint_m - before[Segment::left_foot].joint_m).norm() < 1e-9);
    // Closed form of the two links, as above.
    const double shank_m =
        (after[Segment::right_shank].joint_m - after[Segment::right_foot].joint_m).norm();
    const double thigh_m =
        (after[Segment::right_thigh].joint_m - after[Segment::right_shank].joint_m).norm();
    const double span_m = (target_m - after[Segment::right_foot].joint_m).norm();
    CHECK(std::cos(reached->pose[Hinge::right_knee_flexion]) ==
          Approx((span_m * span_m - shank_m * shank_m - thigh_m * thigh_m) /
                 (2.0 * shank_m * thigh_m))
              .margin(2.0e-4));
}

TEST_CASE("A place that a pose not far away reaches is found", "[inverse-kinematics]") {
    const Body body = winter_body();
    const std::vector<FreeHinge> hinges{whole_range(Hinge::right_shoulder_flexion),
                                        whole_range(Hinge::right_shoulder_abduction),
                                        whole_range(Hinge::right_elbow_flexion)};
    Random random(20261);
    const auto within = [&](const Interval& range) {
        const double share = static_cast<double>(random() % 1000000) / 1.0e6;
        return range.low + share * (range.high - range.low);
    };
    int missed = 0;
    for (int i = 0; i < 500; ++i) {
        Pose there;
        there.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
        Pose start = there;
        for (const FreeHinge& free : hinges) {
            there[free.hinge] = within(free.range_rad);
            start[free.hinge] = within({std::max(free.range_rad.low, there[free.hinge] - 0.4),
                                        std::min(free.range_rad.high, there[free.hinge] + 0.4)});
        }
        const Vec3 target_m =
            place(body, there)[Segment::right_hand].at(local_point(body, kGrip).value());
        const auto reached = reach_point(body, start, {kGrip, target_m, Vec3::Zero()}, hinges);
        REQUIRE(reached);
        for (const FreeHinge& free : hinges) {
            CHECK(reached->pose[free.hinge] >= free.range_rad.low);
            CHECK(reached->pose[free.hinge] <= free.range_rad.high);
        }
        const Vec3 at_m =
            place(body, reached->pose)[Segment::right_hand].at(local_point(body, kGrip).value());
        CHECK((at_m - target_m).norm() == Approx(reached->miss_m).margin(1e-9));
        missed += reached->miss_m > 1.0e-3 ? 1 : 0;
    }
    // Downhill search can stop in a corner between ends of ranges; it must be rare.
    CHECK(missed <= 10);
}

TEST_CASE("A point that the body does not have and a range without the angle are said",
          "[inverse-kinematics]") {
    const SeatedArm arm;
    const BodyPoint sole_of_hand{Segment::right_hand, Spot::sole, 0.0, Vec3::Zero()};
    CHECK_FALSE(
        reach_point(arm.body, arm.pose, {sole_of_hand, Vec3::Zero(), Vec3::Zero()}, arm.hinges));
    const auto refused = reach_point(arm.body, arm.pose, {kGrip, Vec3::Zero(), Vec3::Zero()},
                                     {{Hinge::right_elbow_flexion, false, {1.0, 2.0}}});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().key == "hinges[0].range");
}

} // namespace steelyard::mechanics
