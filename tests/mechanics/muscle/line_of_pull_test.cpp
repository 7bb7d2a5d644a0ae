#include "catch.h"
#include "mechanics/muscle/line_of_pull.h"

#include <Eigen/Geometry>

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// The elbow is the origin, the upper arm stands along +y. At 0 the forearm hangs straight on along
/// -y; flexion turns it about z, towards +x.
const JointAxis kElbow{};

Vec3 on_forearm(const Vec3& place_m, double flexion_rad) {
    return Eigen::AngleAxisd(flexion_rad, Vec3::UnitZ()) * place_m;
}

LineOfPull biceps_like(double flexion_rad) {
    return AttachmentLine{
        Vec3(0.02, 0.30, 0.01), on_forearm(Vec3(0.005, -0.045, -0.005), flexion_rad), {}};
}

AttachmentLine triceps_like(double flexion_rad, double sideways_m = 0.004) {
    return {Vec3(-0.02, 0.25, 0.0), on_forearm(Vec3(-0.025, -0.035, sideways_m), flexion_rad),
            WrapCylinder{0.018, TurnSense::negative}};
}

PlacedLine placed(const LineOfPull& line) {
    const auto found = place_line(line, kElbow);
    REQUIRE(found);
    return *found;
}

/// Minus the change of the path's length with the joint angle, by central difference.
template <typename LineAt> double arm_by_excursion(const LineAt& line_at, double flexion_rad) {
    constexpr double kStep = 1e-5;
    return (placed(line_at(flexion_rad - kStep)).length_m -
            placed(line_at(flexion_rad + kStep)).length_m) /
           (2.0 * kStep);
}

} // namespace

// Virtual work: tension × shortening = torque × turn, so the arm is minus the slope of the length.
// The central difference of step 1e-5 leaves about 1e-10 m of rounding and curvature.
TEST_CASE("the moment arm is the rate at which the muscle shortens as the joint turns",
          "[muscle][line]") {
    const auto triceps = [](double flexion) { return triceps_like(flexion); };
    for (double flexion = 0.1; flexion < 2.4; flexion += 0.1) {
        INFO("flexion " << flexion);
        CHECK_THAT(placed(biceps_like(flexion)).arm_m,
                   WithinAbs(arm_by_excursion(biceps_like, flexion), 1e-9));
        CHECK_THAT(placed(triceps(flexion)).arm_m,
                   WithinAbs(arm_by_excursion(triceps, flexion), 1e-9));
    }
}

TEST_CASE("a muscle that lies on its cylinder keeps the cylinder's radius as its arm",
          "[muscle][line]") {
    const PlacedLine bent = placed(triceps_like(2.0, 0.0));
    CHECK(bent.wrapped);
    CHECK_THAT(bent.arm_m, WithinAbs(-0.018, 1e-12)); // rounding of a few products
    CHECK_THAT(bent.direction.norm(), WithinAbs(1.0, 1e-12));
    // Flexed further it winds up the arc of that angle more.
    const double longer_m =
        placed(triceps_like(2.2, 0.0)).length_m - placed(triceps_like(2.0, 0.0)).length_m;
    CHECK_THAT(longer_m, WithinAbs(0.018 * 0.2, 1e-12));
}

TEST_CASE("a muscle that passes its cylinder at a distance does not feel it", "[muscle][line]") {
    AttachmentLine line = std::get<AttachmentLine>(biceps_like(1.2));
    const PlacedLine without = placed(line);
    line.wrap = WrapCylinder{0.010, TurnSense::positive};
    const PlacedLine with = placed(line);
    CHECK_FALSE(with.wrapped);
    CHECK(with.arm_m == without.arm_m);
}

TEST_CASE("a fixed angle to the bone keeps its arm at every joint angle", "[muscle][line]") {
    for (const double angle_deg : {90.0, 30.0, 150.0})
        for (double flexion = 0.0; flexion < 2.5; flexion += 0.5) {
            const double angle_rad = angle_deg * kPi / 180.0;
            FixedAngleLine line{on_forearm(Vec3(0.0, -0.04, 0.0), flexion), angle_rad,
                                TurnSense::positive};
            CHECK_THAT(placed(line).arm_m, WithinAbs(0.04 * std::sin(angle_rad), 1e-12));
            line.turns = TurnSense::negative;
            CHECK_THAT(placed(line).arm_m, WithinAbs(-0.04 * std::sin(angle_rad), 1e-12));
        }
}

TEST_CASE("a pull splits into a part that turns the bone and a part that presses it into the joint",
          "[muscle][line]") {
    FixedAngleLine line{on_forearm(Vec3(0.0, -0.04, 0.0), 0.7), kPi / 6.0, TurnSense::positive};
    PullParts parts = parts_of_pull(placed(line), 100.0, kElbow);
    CHECK_THAT(parts.turning_N, WithinAbs(50.0, 1e-9));                      // 100 sin 30°
    CHECK_THAT(parts.compressing_N, WithinAbs(50.0 * std::sqrt(3.0), 1e-9)); // 100 cos 30°
    CHECK_THAT(parts.sideways_N, WithinAbs(0.0, 1e-9));

    line.angle_to_bone_rad = 5.0 * kPi / 6.0;
    parts = parts_of_pull(placed(line), 100.0, kElbow);
    CHECK(parts.compressing_N < 0.0); // past 90° the pull draws the bone out of the joint
}

TEST_CASE("a line that cannot be placed says which end is wrong", "[muscle][line]") {
    const auto fault_of = [](const LineOfPull& line) {
        const auto found = place_line(line, kElbow);
        REQUIRE_FALSE(found);
        return found.error();
    };
    CHECK(fault_of(AttachmentLine{}).fault == Fault::zero_length);
    AttachmentLine inside = triceps_like(0.5);
    inside.wrap->radius_m = 0.2;
    CHECK(fault_of(inside).key == "line.wrap.radius");
    CHECK(fault_of(FixedAngleLine{}).key == "line.insertion");
    CHECK(fault_of(FixedAngleLine{Vec3(0.0, -0.04, 0.0), 4.0, TurnSense::positive}).key ==
          "line.angle");
    AttachmentLine lost = triceps_like(0.5);
    lost.origin_m.x() = std::nan("");
    CHECK(fault_of(lost).fault == Fault::not_finite);
}
