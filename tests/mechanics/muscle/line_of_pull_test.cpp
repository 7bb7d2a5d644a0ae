#include "catch.h"
#include "mechanics/muscle/line_of_pull.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// Upper arm hangs along -y from the origin of the world... its elbow at the axis; the forearm
/// turns about z. At 0 the forearm hangs straight on, flexion turns it towards +x.
JointPlace elbow_at(double flexion_rad) {
    JointPlace joint;
    joint.insertion_segment.linear() =
        Eigen::AngleAxisd(flexion_rad, Vec3::UnitZ()).toRotationMatrix();
    return joint;
}

AttachmentLine biceps_like() {
    AttachmentLine line;
    line.origin = {"upper arm", Vec3(0.02, 0.30, 0.01)};
    line.insertion = {"forearm", Vec3(0.005, -0.045, -0.005)};
    return line;
}

AttachmentLine triceps_like() {
    AttachmentLine line;
    line.origin = {"upper arm", Vec3(-0.02, 0.25, 0.0)};
    line.insertion = {"forearm", Vec3(-0.025, -0.035, 0.004)};
    line.wrap = WrapCylinder{0.018, TurnSense::negative};
    return line;
}

PlacedLine placed(const LineOfPull& line, double flexion_rad) {
    const auto found = place_line(line, elbow_at(flexion_rad));
    REQUIRE(found);
    return *found;
}

/// Minus the change of the path's length with the joint angle, by central difference.
double arm_by_excursion(const LineOfPull& line, double flexion_rad) {
    constexpr double kStep = 1e-5;
    return (placed(line, flexion_rad - kStep).length_m -
            placed(line, flexion_rad + kStep).length_m) /
           (2.0 * kStep);
}

} // namespace

// Virtual work: tension × shortening = torque × turn, so the arm is minus the slope of the length.
// The central difference of step 1e-5 leaves about 1e-10 m of rounding and curvature.
TEST_CASE("the moment arm is the rate at which the muscle shortens as the joint turns",
          "[muscle][line]") {
    for (const LineOfPull& line : {LineOfPull(biceps_like()), LineOfPull(triceps_like())})
        for (double flexion = 0.1; flexion < 2.4; flexion += 0.1) {
            INFO("flexion " << flexion);
            CHECK_THAT(placed(line, flexion).arm_m,
                       WithinAbs(arm_by_excursion(line, flexion), 1e-9));
        }
}

TEST_CASE("a muscle that lies on its cylinder keeps the cylinder's radius as its arm",
          "[muscle][line]") {
    AttachmentLine flat = triceps_like();
    flat.insertion.place_m.z() = 0.0;
    const PlacedLine bent = placed(flat, 2.0);
    CHECK(bent.wrapped);
    CHECK_THAT(bent.arm_m, WithinAbs(-0.018, 1e-12)); // rounding of a few products
    CHECK_THAT(bent.direction.norm(), WithinAbs(1.0, 1e-12));
    // Flexed by π/2 more it winds up a quarter of the circle more.
    const double longer_m = placed(flat, 2.2).length_m - placed(flat, 2.0).length_m;
    CHECK_THAT(longer_m, WithinAbs(0.018 * 0.2, 1e-12));
}

TEST_CASE("a muscle that passes its cylinder at a distance does not feel it", "[muscle][line]") {
    AttachmentLine line = biceps_like();
    const PlacedLine without = placed(line, 1.2);
    line.wrap = WrapCylinder{0.010, TurnSense::positive};
    const PlacedLine with = placed(line, 1.2);
    CHECK_FALSE(with.wrapped);
    CHECK(with.arm_m == without.arm_m);
}

TEST_CASE("a fixed angle to the bone keeps its arm at every joint angle", "[muscle][line]") {
    FixedAngleLine line;
    line.insertion = {"forearm", Vec3(0.0, -0.04, 0.0)};
    for (const double angle_deg : {90.0, 30.0, 150.0}) {
        line.angle_to_bone_rad = angle_deg * kPi / 180.0;
        for (double flexion = 0.0; flexion < 2.5; flexion += 0.5) {
            const PlacedLine pull = placed(line, flexion);
            CHECK_THAT(pull.arm_m, WithinAbs(0.04 * std::sin(line.angle_to_bone_rad), 1e-12));
        }
    }
    line.turns = TurnSense::negative;
    CHECK(placed(line, 1.0).arm_m < 0.0);
}

TEST_CASE("a pull splits into a part that turns the bone and a part that presses it into the joint",
          "[muscle][line]") {
    FixedAngleLine line;
    line.insertion = {"forearm", Vec3(0.0, -0.04, 0.0)};
    line.angle_to_bone_rad = kPi / 6.0;
    const JointPlace joint = elbow_at(0.7);
    PullParts parts = parts_of_pull(placed(line, 0.7), 100.0, joint);
    CHECK_THAT(parts.turning_N, WithinAbs(50.0, 1e-9));                      // 100 sin 30°
    CHECK_THAT(parts.compressing_N, WithinAbs(50.0 * std::sqrt(3.0), 1e-9)); // 100 cos 30°
    CHECK_THAT(parts.sideways_N, WithinAbs(0.0, 1e-9));

    line.angle_to_bone_rad = 5.0 * kPi / 6.0;
    parts = parts_of_pull(placed(line, 0.7), 100.0, joint);
    CHECK(parts.compressing_N < 0.0); // past 90° the pull draws the bone out of the joint
}

TEST_CASE("a line that cannot be placed says which end is wrong", "[muscle][line]") {
    const auto fault_of = [](const LineOfPull& line) {
        const auto found = place_line(line, elbow_at(0.5));
        REQUIRE_FALSE(found);
        return found.error();
    };
    AttachmentLine same;
    CHECK(fault_of(same).fault == Fault::zero_length);
    AttachmentLine inside = triceps_like();
    inside.wrap->radius_m = 0.2;
    CHECK(fault_of(inside).key == "line.wrap.radius");
    FixedAngleLine on_axis;
    CHECK(fault_of(on_axis).key == "line.insertion");
    FixedAngleLine turned;
    turned.insertion.place_m = Vec3(0.0, -0.04, 0.0);
    turned.angle_to_bone_rad = 4.0;
    CHECK(fault_of(turned).key == "line.angle");
    AttachmentLine lost = biceps_like();
    lost.origin.place_m.x() = std::nan("");
    CHECK(fault_of(lost).fault == Fault::not_finite);
}
