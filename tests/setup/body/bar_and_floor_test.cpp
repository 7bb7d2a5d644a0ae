// Shipped exercises stand and hold as their words say: the bar against the legs, the pressure under
// the foot, the hands on the floor.

#include "catch.h"
#include "mechanics/range/sweep.h"
#include "setup/setup.h"

#include <algorithm>
#include <cmath>
#include <string>

using namespace steelyard::setup;
using namespace steelyard::mechanics;

namespace {

BodySetup shipped_body(const std::string& name) {
    const auto read = read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" + name +
                                 ".setup.toml");
    REQUIRE(read);
    return std::get<BodySetup>(*read);
}

/// An exercise solved at a place of its path.
struct Standing {
    BodyCase body_case;
    BodyResult result;

    Vec3 at(Segment segment, Spot spot) const {
        const auto local_m = local_point(body_case.body, {segment, spot, 0.0, Vec3::Zero()});
        REQUIRE(local_m);
        return result.placement[segment].joint_m + result.placement[segment].rotation * *local_m;
    }
    Vec3 joint_m(Segment segment) const { return result.placement[segment].joint_m; }
};

Standing at_place(const BodySetup& setup, double progress) {
    Standing standing{setup.exercise.body_case, {}};
    if (setup.exercise.path)
        standing.body_case.pose = pose_at(standing.body_case.pose, *setup.exercise.path, progress);
    standing.result = solve_body(standing.body_case).value();
    return standing;
}

/// How far a height's point of the leg's axis lies forward [m].
double leg_forward_m(const Standing& standing, double height_m) {
    const Vec3 hip = standing.joint_m(Segment::right_thigh);
    const Vec3 knee = standing.joint_m(Segment::right_shank);
    const Vec3 ankle = standing.joint_m(Segment::right_foot);
    const auto& [upper, lower] =
        height_m > knee.y() ? std::pair(hip, knee) : std::pair(knee, ankle);
    const double part = (height_m - lower.y()) / (upper.y() - lower.y());
    return lower.x() + part * (upper.x() - lower.x());
}

/// From the front of the leg to the bar [m]. Half the depth of the leg: 6 cm at the knee and below
/// it, 9 cm at the hip; from memory of usual proportions.
double clearance_m(const Standing& standing) {
    const Vec3 bar = standing.at(Segment::right_hand, Spot::grip);
    const double knee_m = standing.joint_m(Segment::right_shank).y();
    const double hip_m = standing.joint_m(Segment::right_thigh).y();
    const double up_the_thigh = std::clamp((bar.y() - knee_m) / (hip_m - knee_m), 0.0, 1.0);
    return bar.x() - leg_forward_m(standing, bar.y()) - (0.06 + 0.03 * up_the_thigh);
}

/// Where the ground's pushes act together, forward [m].
double pressure_m(const Standing& standing) {
    double moment_Nm = 0.0, push_N = 0.0;
    for (const BodyForce& force : standing.result.forces)
        if (force.origin == ForceOrigin::contact) {
            moment_Nm += force.point_m.x() * force.force_N.y();
            push_N += force.force_N.y();
        }
    REQUIRE(push_N > 0.0);
    return moment_Nm / push_N;
}

double middle_of_foot_m(const Standing& standing) {
    return 0.5 * (standing.at(Segment::right_foot, Spot::heel).x() +
                  standing.at(Segment::right_toes, Spot::toe_tip).x());
}

constexpr double kPlaces[] = {0.0, 0.2, 0.4, 0.6, 0.8, 1.0};

} // namespace

TEST_CASE("the near bar stays at the legs, within 5 cm, and the pressure in the middle of the foot",
          "[shipped][body]") {
    const BodySetup near = shipped_body("hinge-bar-near");
    for (const double progress : kPlaces) {
        INFO(progress);
        const Standing standing = at_place(near, progress);
        CHECK(clearance_m(standing) >= -0.005); // flesh gives way
        CHECK(clearance_m(standing) <= 0.05);
        CHECK(std::abs(pressure_m(standing) - middle_of_foot_m(standing)) < 0.02);
    }
}

TEST_CASE("the drifting bar is a hand's breadth farther out, and its lifter still stands",
          "[shipped][body]") {
    const BodySetup near = shipped_body("hinge-bar-near");
    const BodySetup drifting = shipped_body("hinge-bar-drifting");
    for (const double progress : kPlaces) {
        INFO(progress);
        const Standing out = at_place(drifting, progress);
        const double farther_m = clearance_m(out) - clearance_m(at_place(near, progress));
        CHECK(farther_m > 0.07); // a hand is 8 to 10 cm broad: from memory
        CHECK(farther_m < 0.12);
        CHECK(pressure_m(out) > middle_of_foot_m(out));
        CHECK(pressure_m(out) < out.at(Segment::right_foot, Spot::ball).x());
    }
}

TEST_CASE("the bar of a deadlift rises in a straight line past shins, knees and thighs",
          "[shipped][body]") {
    const BodySetup lift = shipped_body("deadlift-floor");
    const Vec3 first = at_place(lift, 0.0).at(Segment::right_hand, Spot::grip);
    const Vec3 last = at_place(lift, 1.0).at(Segment::right_hand, Spot::grip);
    // Plates of the usual breadth of 45 cm (common practice, no source) hold it at half of that.
    CHECK_THAT(first.y(), WithinAbs(0.225, 0.01));
    CHECK(std::abs(last.x() - first.x()) < 0.03);
    for (double progress = 0.0; progress <= 1.0; progress += 0.05) {
        INFO(progress);
        const Standing standing = at_place(lift, progress);
        const Vec3 bar = standing.at(Segment::right_hand, Spot::grip);
        const double part = (bar.y() - first.y()) / (last.y() - first.y());
        CHECK_THAT(bar.x(), WithinAbs(first.x() + part * (last.x() - first.x()), 0.002));
        CHECK(clearance_m(standing) >= -0.005); // flesh gives way
        CHECK(clearance_m(standing) <= 0.05);
    }
}

TEST_CASE("the hands hold a bar that lies on the back, all the way", "[shipped][body]") {
    for (const char* name : {"squat-bar-back", "squat-leaning", "good-morning"})
        for (const double progress : {0.0, 0.5, 1.0}) {
            INFO(name << " at " << progress);
            const Standing standing = at_place(shipped_body(name), progress);
            const Vec3 bar = standing.at(Segment::trunk, Spot::upper_back);
            for (const Segment hand : {Segment::right_hand, Segment::left_hand}) {
                const Vec3 off = standing.at(hand, Spot::grip) - bar;
                CHECK(std::hypot(off.x(), off.y()) < 0.01); // within the hand's closed fingers
                CHECK(std::abs(off.z()) > 0.25);            // outside the shoulders
            }
        }
}

TEST_CASE("a hand and a forearm that carry lie on the floor with their flesh, not in it",
          "[shipped][body]") {
    // Half the thickness of a hand is 1.3 to 1.6 cm: from memory.
    const Standing push = at_place(shipped_body("push-up"), 0.0);
    CHECK(push.joint_m(Segment::right_hand).y() > 0.012);
    CHECK(push.joint_m(Segment::right_hand).y() < 0.02);
    const Standing last = at_place(shipped_body("push-up"), 1.0);
    CHECK_THAT(last.joint_m(Segment::right_hand).y(),
               WithinAbs(push.joint_m(Segment::right_hand).y(), 1e-3));
}

TEST_CASE("a step-up begins with the tip of the back foot at the floor", "[shipped][body]") {
    const Standing first = at_place(shipped_body("step-up"), 0.0);
    CHECK_THAT(first.at(Segment::left_toes, Spot::toe_tip).y(), WithinAbs(0.0, 0.005));
}

// The arms draw the load to the body: the elbow bends against it, and the shoulder draws back,
// anywhere on the way. Movers: OpenStax, Anatomy & Physiology 2e, chapter 11, as for movers_test.
TEST_CASE("pulling exercises ask the elbow to bend and pressing ones to straighten, all the way",
          "[shipped][body]") {
    for (const double progress : {0.1, 0.3, 0.5, 0.7, 0.9}) {
        INFO(progress);
        for (const char* name : {"seated-row", "pull-down"}) {
            INFO(name);
            const Standing pull = at_place(shipped_body(name), progress);
            CHECK(pull.result.muscle(Hinge::right_elbow_flexion) > 0.0);
            CHECK(pull.result.muscle(Hinge::right_shoulder_flexion) < 0.0);
        }
        const Standing press = at_place(shipped_body("bench-press"), progress);
        CHECK(press.result.muscle(Hinge::right_elbow_flexion) < 0.0);
        const Standing rowing = at_place(shipped_body("rowing-trunk-swing"), progress);
        CHECK(rowing.result.muscle(Hinge::right_shoulder_flexion) < 0.0);
    }
}
