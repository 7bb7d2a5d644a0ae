#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/range/touch.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

BodyCase with_left_leg(double hip_deg, double knee_deg, double ankle_deg) {
    BodyCase body_case = standing(winter_body());
    body_case.pose[Hinge::left_hip_flexion] = degrees(hip_deg);
    body_case.pose[Hinge::left_knee_flexion] = degrees(knee_deg);
    body_case.pose[Hinge::left_ankle_flexion] = degrees(ankle_deg);
    return body_case;
}

} // namespace

TEST_CASE("a foot that hangs is found with its height and what to turn", "[range][touch]") {
    // Thigh 30 degrees forward, shank plumb, sole level: by the thigh's length times 1 - cos 30.
    const BodyCase body_case = with_left_leg(30, 30, 0);
    const double thigh_m = body_case.body[Segment::left_thigh].length_m;
    const auto fault = find_touch_fault(body_case, std::nullopt);
    REQUIRE(fault);
    CHECK(fault->contact == 1);
    CHECK(fault->progress == 0.0);
    CHECK_THAT(fault->gap_m, WithinAbs(thigh_m * (1.0 - std::cos(degrees(30))), 1e-12));
    // Turned so, it touches.
    REQUIRE_FALSE(fault->mend.empty());
    BodyCase mended = body_case;
    for (const MendingTurn& turn : fault->mend) {
        CHECK(turn.from_rad == body_case.pose[turn.hinge]);
        CHECK_FALSE(turn.both_sides);
        mended.pose[turn.hinge] = turn.to_rad;
    }
    CHECK_FALSE(find_touch_fault(mended, std::nullopt));
}

TEST_CASE("one turn is told where one is enough", "[range][touch]") {
    // From the knee down the leg is straight: the hip alone brings the foot down and level.
    const auto fault = find_touch_fault(with_left_leg(25, 0, 0), std::nullopt);
    REQUIRE(fault);
    REQUIRE(fault->mend.size() == 1);
    CHECK(fault->mend[0].hinge == Hinge::left_hip_flexion);
    CHECK(std::abs(fault->mend[0].to_rad) < degrees(6)); // within a centimetre of the floor
}

TEST_CASE("contacts are measured against what they touch, and along the path", "[range][touch]") {
    BodyCase body_case = with_left_leg(30, 30, 0);
    const double thigh_m = body_case.body[Segment::left_thigh].length_m;
    auto& contacts = std::get<OnContacts>(body_case.support).contacts;
    contacts[1].level_m = thigh_m * (1.0 - std::cos(degrees(30)));
    CHECK_FALSE(find_touch_fault(body_case, std::nullopt));
    contacts[1].level_m += 0.03;
    const auto sunk = find_touch_fault(body_case, std::nullopt);
    REQUIRE(sunk);
    CHECK_THAT(sunk->gap_m, WithinAbs(-0.03, 1e-12));

    const BodyCase flat = standing(winter_body());
    std::optional<PosePath> path = PosePath{flat.pose.angle_rad};
    path->end_angle_rad[index_of(Hinge::left_hip_flexion)] = degrees(40);
    const auto lifted = find_touch_fault(flat, path);
    REQUIRE(lifted);
    CHECK(lifted->progress > 0.0);
    CHECK(lifted->progress < 0.5);
}

TEST_CASE("a tilted contact touches where its pressure is", "[range][touch]") {
    // Sole turned up about the ankle: the heel's end comes down, the toes' end goes up.
    BodyCase body_case = with_left_leg(0, 0, 15);
    const auto fault = find_touch_fault(body_case, std::nullopt);
    REQUIRE(fault);
    CHECK(fault->gap_m > 0.02);
    const Body& body = body_case.body;
    const double tip_m = body.ball_before_ankle_m + body.toe_tip_before_ball_m;
    const double below_m = body.ankle_height_m;
    CHECK_THAT(
        fault->gap_m,
        WithinAbs(tip_m * std::sin(degrees(15)) + below_m * (1.0 - std::cos(degrees(15))), 1e-12));
    // Below the ankle, at a quarter of the foot, it is still down.
    Contact& left = std::get<OnContacts>(body_case.support).contacts[1];
    left.pressure_at = body.heel_behind_ankle_m / (body.heel_behind_ankle_m + tip_m);
    CHECK(find_touch_fault(body_case, std::nullopt)); // the whole sole was to touch
    left.tilts = true;
    CHECK_FALSE(find_touch_fault(body_case, std::nullopt));
}

} // namespace steelyard::mechanics
