#include "catch.h"
#include "mechanics/body/kinematics.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/range/stick.h"
#include "mechanics/range/sweep.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

namespace {

constexpr int kPlaces = 97; // between the places at which the way is bent too

/// A long step: the right foot in front, the left toes behind, the left heel up. The front leg
/// bends on the way; the rear leg must follow.
struct LongStep {
    BodyCase body_case = standing(winter_body());
    std::optional<PosePath> path;

    LongStep() {
        Pose& pose = body_case.pose;
        pose[Hinge::right_hip_flexion] = degrees(30);
        pose[Hinge::right_knee_flexion] = degrees(30);
        pose[Hinge::left_hip_flexion] = degrees(-20);
        pose[Hinge::left_knee_flexion] = degrees(25);
        pose[Hinge::left_ankle_flexion] = degrees(10);
        PosePath way{pose.angle_rad};
        way.end_angle_rad[index_of(Hinge::right_hip_flexion)] = degrees(55);
        way.end_angle_rad[index_of(Hinge::right_knee_flexion)] = degrees(60);
        way.end_angle_rad[index_of(Hinge::right_ankle_flexion)] = degrees(8);
        path = way;
        OnContacts on;
        on.contacts[1] = {Segment::left_toes, Patch::toes};
        on.contacts[1].sticks = true;
        body_case.support = on;
    }
    const Contact& rear() const { return std::get<OnContacts>(body_case.support).contacts[1]; }
};

/// Farthest that a corner of a contact comes off its place at the start of a movement [m].
double comes_off_m(const BodyCase& body_case, const Movement& movement, const Contact& contact) {
    const auto corners = patch_corners(body_case.body, contact).value();
    const Placement there = place(body_case.body, movement.start);
    double most_m = 0.0;
    for (int i = 0; i <= kPlaces; ++i) {
        const Placement here =
            place(body_case.body, pose_at(movement.start, *movement.path,
                                          static_cast<double>(i) / static_cast<double>(kPlaces)));
        for (const Vec3& corner : corners)
            most_m = std::max(
                most_m,
                (here[contact.segment].at(corner) - there[contact.segment].at(corner)).norm());
    }
    return most_m;
}

} // namespace

TEST_CASE("a contact that sticks stays on its place all the way", "[range][stick]") {
    const LongStep step;
    // Straight from start to end it would not.
    CHECK(comes_off_m(step.body_case, {step.body_case.pose, step.path}, step.rear()) > 0.1);
    const auto kept = stick(step.body_case, step.path, step.body_case.pose);
    REQUIRE(kept);
    // A millimetre is what the curves between the bent places may miss.
    CHECK(comes_off_m(step.body_case, *kept, step.rear()) < 1e-3);
    // The start was in place; the front leg keeps its way to the last bit; the rear leg follows.
    CHECK(kept->start.angle_rad == step.body_case.pose.angle_rad);
    for (const Hinge hinge : {Hinge::right_hip_flexion, Hinge::right_knee_flexion,
                              Hinge::right_ankle_flexion, Hinge::lumbar_flexion})
        CHECK(pose_at(kept->start, *kept->path, 0.4)[hinge] ==
              pose_at(step.body_case.pose, *step.path, 0.4)[hinge]);
    CHECK(kept->path->end_angle_rad[index_of(Hinge::left_knee_flexion)] > degrees(35));
    // What is in place already stays as it is, to the last bit.
    BodyCase again = step.body_case;
    again.pose = kept->start;
    const auto twice = stick(again, kept->path, kept->start);
    REQUIRE(twice);
    CHECK(twice->path->end_angle_rad == kept->path->end_angle_rad);
}

TEST_CASE("in motion a contact that sticks has no speed", "[range][stick]") {
    const LongStep step;
    const auto kept = stick(step.body_case, step.path, step.body_case.pose).value();
    const Body& body = step.body_case.body;
    for (const double progress : {0.1, 0.35, 0.62, 0.9}) {
        Pose pose;
        Motion motion;
        pose_and_motion_at(kept.start, *kept.path, {progress, 1.0, 0.0}, pose, motion);
        const Placement placement = place(body, pose);
        BodyMotion moving;
        move(pose, placement, motion, moving);
        // The knee bends by half a radian in the second that the way takes.
        const SegmentMotion& toes = moving[index_of(Segment::left_toes)];
        CHECK(toes.joint_velocity_m_s.norm() < 0.01);
        CHECK(toes.angular_velocity_rad_s.norm() < 0.03);
        CHECK(moving[index_of(Segment::left_shank)].joint_velocity_m_s.norm() > 0.1);
    }
}

// Source of the closed form: law of cosines. The hand lies on a table while the trunk leans: upper
// arm and forearm are two sides of a triangle whose third side is known.
TEST_CASE("an arm whose hand sticks bends as the law of cosines says", "[range][stick]") {
    BodyCase body_case = standing(winter_body());
    body_case.pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(40);
    body_case.pose[Hinge::right_elbow_flexion] = degrees(50);
    OnContacts on;
    on.contacts = {{Segment::right_hand, Patch::palm}};
    on.contacts[0].sticks = true;
    body_case.support = on;
    std::optional<PosePath> path = PosePath{body_case.pose.angle_rad};
    path->end_angle_rad[index_of(Hinge::lumbar_flexion)] = degrees(20);
    const auto kept = stick(body_case, path, body_case.pose);
    REQUIRE(kept);
    const auto shoulder_m = [&](const Pose& pose) {
        return place(body_case.body, pose).axis_point_m(Hinge::right_shoulder_flexion);
    };
    const Vec3 wrist_m =
        place(body_case.body, kept->start).axis_point_m(Hinge::right_wrist_flexion);
    const double upper_m = body_case.body[Segment::right_upper_arm].length_m;
    const double fore_m = body_case.body[Segment::right_forearm].length_m;
    for (const double progress : {0.25, 0.5, 0.75, 1.0}) {
        const Pose pose = pose_at(kept->start, *kept->path, progress);
        const double far_m = (shoulder_m(pose) - wrist_m).norm();
        const double cosine =
            (far_m * far_m - upper_m * upper_m - fore_m * fore_m) / (2.0 * upper_m * fore_m);
        CHECK_THAT(pose[Hinge::right_elbow_flexion], WithinAbs(std::acos(cosine), 1e-4));
        CHECK(pose[Hinge::left_elbow_flexion] == body_case.pose[Hinge::left_elbow_flexion]);
    }
}

TEST_CASE("two hands on one bar keep their distance, both arms alike to the last bit",
          "[range][stick]") {
    BodyCase body_case = standing(winter_body());
    std::optional<PosePath> path = PosePath{};
    const auto both = [&](Hinge right, double from_deg, double to_deg) {
        for (const Hinge hinge : {right, hinge_info(right).mirror}) {
            body_case.pose[hinge] = degrees(from_deg);
            path->end_angle_rad[index_of(hinge)] = degrees(to_deg);
        }
    };
    // Overhead: from the collarbones up, the elbows out at first.
    both(Hinge::right_shoulder_flexion, 30, 165);
    both(Hinge::right_shoulder_abduction, 35, 10);
    both(Hinge::right_elbow_flexion, 120, 15);
    Resistance bar;
    bar.kind = Barbell{20.0, std::nullopt};
    body_case.resistances = {bar};
    const auto distance_m = [&](const Pose& pose) {
        const Placement placement = place(body_case.body, pose);
        const auto grip_m = [&](Segment hand) {
            return placement[hand].at(
                local_point(body_case.body, {hand, Spot::grip, 0.0, Vec3::Zero()}).value());
        };
        return (grip_m(Segment::right_hand) - grip_m(Segment::left_hand)).norm();
    };
    const auto kept = stick(body_case, path, body_case.pose);
    REQUIRE(kept);
    const double wide_m = distance_m(body_case.pose);
    CHECK(std::abs(distance_m(pose_at(body_case.pose, *path, 0.5)) - wide_m) > 0.02);
    for (const double progress : {0.0, 0.21, 0.5, 0.83, 1.0}) {
        const Pose pose = pose_at(kept->start, *kept->path, progress);
        CHECK_THAT(distance_m(pose), WithinAbs(wide_m, 1e-3));
        for (const HingeInfo& info : all_hinges())
            CHECK(pose[info.hinge] == pose[info.mirror]);
    }
    // One hand alone, or a twisted body, has no such bar to keep to.
    path->end_angle_rad[index_of(Hinge::lumbar_rotation)] = degrees(20);
    const auto twisted = stick(body_case, path, body_case.pose);
    REQUIRE(twisted);
    CHECK(twisted->path->bends.empty());
    CHECK(twisted->path->end_angle_rad == path->end_angle_rad);
}

TEST_CASE("where nothing sticks the movement stays as it was, to the last bit", "[range][stick]") {
    LongStep step;
    step.body_case.support = OnContacts{};
    const auto kept = stick(step.body_case, step.path, step.body_case.pose);
    REQUIRE(kept);
    CHECK(kept->start.angle_rad == step.body_case.pose.angle_rad);
    CHECK(kept->path->end_angle_rad == step.path->end_angle_rad);
    CHECK(kept->path->bends.empty());
}

TEST_CASE("what cannot stay is named with where and how far it comes off", "[range][stick]") {
    LongStep step;
    // The front leg straightens until the rear leg is too short.
    for (const Hinge hinge : {Hinge::right_hip_flexion, Hinge::right_knee_flexion})
        step.path->end_angle_rad[index_of(hinge)] = 0.0;
    step.path->end_angle_rad[index_of(Hinge::right_ankle_flexion)] = degrees(25);
    const auto kept = stick(step.body_case, step.path, step.body_case.pose);
    REQUIRE_FALSE(kept);
    CHECK(kept.error().key == "support.contacts[1].stick");
    CHECK(kept.error().expected.find("the left toes") != std::string::npos);
    CHECK(kept.error().expected.find(" mm") != std::string::npos);
}

TEST_CASE("the work along a bent path is the gain of height energy", "[range][stick]") {
    // Law: without motion the muscles' work is the change of potential energy, whatever the way.
    LongStep step;
    const auto kept = stick(step.body_case, step.path, step.body_case.pose).value();
    BodyCase body_case = step.body_case;
    body_case.pose = kept.start;
    const auto swept = sweep(body_case, *kept.path, 385);
    REQUIRE(swept);
    const double gain_J = swept->potential_energy_J.back() - swept->potential_energy_J.front();
    CHECK(gain_J < -50.0);
    // Simpson's rule over 16 steps for each piece of the curves; contacts move by less than 1 mm,
    // so 740 N of ground push do less than 0.7 J.
    CHECK_THAT(total_work_J(body_case, *kept.path, *swept), WithinAbs(gain_J, 0.7));
}

} // namespace steelyard::mechanics
