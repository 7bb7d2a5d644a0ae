#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/body/solve_body.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// A body whose whole mass sits at one place of the world, carried by the pelvis.
void lump_at(BodyCase& body_case, double mass_kg, const Vec3& world_m) {
    for (SegmentBody& each : body_case.body.segments) {
        each.mass_kg = 0.0;
        each.inertia_kg_m2.setZero();
    }
    const SegmentFrame pelvis = place(body_case.body, body_case.pose)[Segment::pelvis];
    body_case.body[Segment::pelvis].mass_kg = mass_kg;
    body_case.body[Segment::pelvis].com_m =
        pelvis.rotation.transpose() * (world_m - pelvis.joint_m);
    body_case.body.mass_kg = mass_kg;
}

const BodyForce* contact_force(const BodyResult& result, std::size_t contact) {
    for (const BodyForce& force : result.forces)
        if (force.origin == ForceOrigin::contact && force.index == contact)
            return &force;
    return nullptr;
}

/// Feet and hands on the floor, body straight, as at the top of a push-up: toes at the origin.
BodyCase push_up() {
    BodyCase body_case = standing(winter_body());
    body_case.pose.anchor.point = {Segment::right_toes, Spot::along, 0.0, Vec3::Zero()};
    const double incline_deg = 20.0;
    for (const Hinge hinge : {Hinge::right_shoulder_flexion, Hinge::left_shoulder_flexion})
        body_case.pose[hinge] = degrees(90.0 - incline_deg);
    for (const Hinge hinge : {Hinge::right_wrist_flexion, Hinge::left_wrist_flexion})
        body_case.pose[hinge] = degrees(-90.0);
    for (const Hinge hinge : {Hinge::right_toe_extension, Hinge::left_toe_extension})
        body_case.pose[hinge] = degrees(90.0 - incline_deg);
    body_case.pose[Hinge::right_ankle_flexion] = 0.0;
    body_case.support = OnContacts{{{Segment::right_hand, Patch::palm, 0.5},
                                    {Segment::left_hand, Patch::palm, 0.5},
                                    {Segment::right_foot, Patch::ball, 0.5},
                                    {Segment::left_foot, Patch::ball, 0.5}},
                                   kSoleFriction};
    return body_case;
}

} // namespace

TEST_CASE("Standing, the ground carries the body's weight, half on each foot", "[balance]") {
    const BodyResult result = solve_body(standing(winter_body())).value();
    CHECK(result.ground.status == BalanceStatus::balanced);
    CHECK_THAT(result.ground.reaction_N.y(), WithinAbs(75.0 * kStandardGravity, 1e-9));
    CHECK_THAT(result.ground.reaction_N.x(), WithinAbs(0.0, 1e-9));
    for (const std::size_t foot : {0u, 1u})
        CHECK_THAT(contact_force(result, foot)->force_N.y(),
                   WithinAbs(37.5 * kStandardGravity, 1e-9));
    // The centre of pressure lies below the centre of mass.
    CHECK_THAT(result.ground.centre_of_pressure_m.x(),
               WithinAbs(result.centre_of_mass_m.x(), 1e-12));
    CHECK_THAT(result.ground.centre_of_pressure_m.z(),
               WithinAbs(result.centre_of_mass_m.z(), 1e-12));
}

TEST_CASE("A weight in one hand loads the foot of its side by the law of the lever", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 20.0}}};
    const BodyResult result = solve_body(body_case).value();
    const double right_N = contact_force(result, 0)->force_N.y();
    const double left_N = contact_force(result, 1)->force_N.y();
    CHECK_THAT(right_N + left_N, WithinAbs(95.0 * kStandardGravity, 1e-9));
    // Moments about the middle between the feet, by hand: feet 0.0875 m to each side, hand at
    // 0.1295 x 1.75 m.
    CHECK_THAT((right_N - left_N) * 0.0875,
               WithinAbs(20.0 * kStandardGravity * 0.1295 * 1.75, 1e-9));
    CHECK(result.ground.status == BalanceStatus::balanced);
}

TEST_CASE("A push-up divides the weight between hands and toes by the law of the lever",
          "[balance]") {
    // College Physics 2e (OpenStax), problem 9.37: 50.0 kg, centre of gravity 0.90 m and hands
    // 1.50 m from the toes: 147 N on each hand, g = 9.80.
    BodyCase body_case = push_up();
    body_case.gravity_m_s2 = 9.80;
    BodyResult probe = solve_body(body_case).value();
    const double toes_m = contact_force(probe, 2)->point_m.x();
    // Our hands stand elsewhere than the book's: put the mass at the same fraction of the way.
    const double hands_m = contact_force(probe, 0)->point_m.x();
    lump_at(body_case, 50.0,
            Vec3(toes_m + (hands_m - toes_m) * 0.90 / 1.50, 0.4,
                 place(body_case.body, body_case.pose)[Segment::pelvis].joint_m.z()));
    const BodyResult result = solve_body(body_case).value();
    REQUIRE(result.ground.status == BalanceStatus::balanced);
    for (const std::size_t hand : {0u, 1u})
        CHECK_THAT(contact_force(result, hand)->force_N.y(), WithinAbs(147.0, 1e-9));
    for (const std::size_t foot : {2u, 3u})
        CHECK_THAT(contact_force(result, foot)->force_N.y(), WithinAbs(98.0, 1e-9));
}

TEST_CASE("On the ball of one foot the ankle carries weight times the way to the ball",
          "[balance]") {
    // College Physics 2e (OpenStax), problem 9.33: 75 kg on one foot, ground force 12 cm in front
    // of the ankle; with the tendon 4.0 cm behind it: 2205 N (published-values 1b).
    BodyCase body_case = standing(winter_body());
    body_case.gravity_m_s2 = 9.80;
    body_case.body.ball_before_ankle_m = 0.12;
    body_case.body[Segment::right_foot].tip_m.x() = 0.12;
    body_case.body[Segment::right_toes].joint_m.x() = 0.12;
    body_case.support = OnContacts{{{Segment::right_foot, Patch::ball, 0.5}}, kSoleFriction};
    lump_at(body_case, 75.0, Vec3(0.12, 1.0, 0.0));
    const BodyResult result = solve_body(body_case).value();
    REQUIRE(result.ground.status == BalanceStatus::balanced);
    const double ankle_Nm = result.external(Hinge::right_ankle_flexion);
    CHECK_THAT(ankle_Nm / 0.040, WithinAbs(2205.0, 1e-9));
    // About the ball itself the ground's force has no arm.
    CHECK_THAT(result.external(Hinge::right_toe_extension), WithinAbs(0.0, 1e-9));
}

TEST_CASE("A body that leans past its feet topples that way", "[balance]") {
    const auto lean = [](double forward_deg, double side_deg) {
        BodyCase body_case = standing(winter_body());
        for (const Hinge hinge : {Hinge::right_ankle_flexion, Hinge::left_ankle_flexion})
            body_case.pose[hinge] = degrees(forward_deg);
        body_case.pose[Hinge::right_ankle_inversion] = degrees(-side_deg);
        body_case.pose[Hinge::left_ankle_inversion] = degrees(side_deg);
        return solve_body(body_case).value();
    };
    const BodyResult forward = lean(25.0, 0.0);
    CHECK(forward.ground.status == BalanceStatus::would_topple);
    CHECK(forward.ground.topples == ToppleDirection::forward);
    CHECK(forward.ground.beyond_edge_m > 0.05);
    CHECK(forward.leftover_couple_Nm.norm() > 10.0);
    // Forward toppling is a turn about -z.
    CHECK(forward.ground.unbalanced_Nm.z() * forward.leftover_couple_Nm.z() < 0.0);

    const BodyResult backward = lean(-15.0, 0.0);
    CHECK(backward.ground.topples == ToppleDirection::backward);
    const BodyResult small = lean(4.0, 0.0);
    CHECK(small.ground.status == BalanceStatus::balanced);
    CHECK(small.ground.topples == ToppleDirection::none);
}

TEST_CASE("One leg must stand below the centre of mass or the body falls to the other side",
          "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.support = OnContacts{{{Segment::right_foot, Patch::sole, {}}}, kSoleFriction};
    const BodyResult result = solve_body(body_case).value();
    CHECK(result.ground.status == BalanceStatus::would_topple);
    CHECK(result.ground.topples == ToppleDirection::left);
}

TEST_CASE("A setup's centre of pressure off the balance needs a steadying touch", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.support = OnContacts{
        {{Segment::right_foot, Patch::sole, 0.5}, {Segment::left_foot, Patch::sole, 0.5}},
        kSoleFriction};
    const BodyResult result = solve_body(body_case).value();
    CHECK(result.ground.status == BalanceStatus::steadied);
    const BodyForce& touch = result.forces[result.forces.size() - 1];
    CHECK(touch.origin == ForceOrigin::steadying);
    // By hand: the middle of the sole lies 0.5 x 0.152 - 0.25 x 0.152 m before the ankle, the
    // centre of mass some way before it; the touch makes up weight times the difference.
    const double middle_m = 0.25 * 0.152 * 1.75;
    CHECK_THAT(touch.couple_Nm.z(),
               WithinAbs((result.centre_of_mass_m.x() - middle_m) * 75.0 * kStandardGravity, 1e-9));
    CHECK(result.leftover_couple_Nm.norm() < 1e-9);
}

TEST_CASE("Beside a foot whose pressure stays, that of the other moves twice as far as the body",
          "[balance]") {
    BodyCase body_case = standing(winter_body());
    std::get<OnContacts>(body_case.support).contacts[0].pressure_at = 0.5;
    const BodyResult probe = solve_body(body_case).value();
    const double middle_m = contact_force(probe, 0)->point_m.x();
    const double between_m = probe.placement[Segment::pelvis].joint_m.z();
    lump_at(body_case, 75.0, Vec3(middle_m + 0.03, 1.0, between_m));
    const BodyResult result = solve_body(body_case).value();
    CHECK(result.ground.status == BalanceStatus::balanced);
    // Each foot bears half. Moments about the line across the middle of the feet, by hand:
    // ½ · 0 + ½ · x = 3 cm, so x = 6 cm.
    for (const auto& [foot, before_m] : {std::pair(0u, 0.0), std::pair(1u, 0.06)}) {
        CHECK_THAT(contact_force(result, foot)->force_N.y(),
                   WithinAbs(37.5 * kStandardGravity, 1e-9));
        CHECK_THAT(contact_force(result, foot)->point_m.x(), WithinAbs(middle_m + before_m, 1e-9));
    }
}

TEST_CASE("A sideways pull needs friction, and slips when there is too little", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.resistances = {
        {"cable",
         Cable{{Segment::pelvis, Spot::along, 0.0, Vec3::Zero()}, Vec3(0.0, 0.9275, 5.0), 40.0}}};
    auto& contacts = std::get<OnContacts>(body_case.support);
    const BodyResult result = solve_body(body_case).value();
    CHECK(result.ground.status == BalanceStatus::balanced);
    CHECK_THAT(result.ground.needed_friction, WithinAbs(40.0 / (75.0 * kStandardGravity), 1e-4));
    contacts.friction = 0.05;
    CHECK(solve_body(body_case).value().ground.status == BalanceStatus::would_slip);
}

TEST_CASE("A cable stronger than the body lifts it off", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.resistances = {
        {"cable",
         Cable{{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}, Vec3(0.0, 9.0, 0.0), 900.0}}};
    const BodyResult result = solve_body(body_case).value();
    CHECK(result.ground.status == BalanceStatus::lifts_off);
    CHECK(result.ground.reaction_N.norm() == 0.0);
    CHECK(std::isfinite(result.leftover_force_N.y()));
    CHECK(result.leftover_force_N.y() > 100.0);
}

TEST_CASE("A held pelvis leaves the legs hanging and the arms as they were", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.pose[Hinge::right_elbow_flexion] = degrees(90);
    const double standing_Nm = solve_body(body_case).value().muscle(Hinge::right_elbow_flexion);
    body_case.support = Held{Segment::pelvis};
    const BodyResult held = solve_body(body_case).value();
    CHECK(held.ground.status == BalanceStatus::held);
    CHECK_THAT(held.muscle(Hinge::right_elbow_flexion), WithinAbs(standing_Nm, 1e-12));
    // A hanging leg pulls its hip down with its own weight: 0.161 of the body (Winter).
    CHECK_THAT(held.joint_force(Segment::right_thigh).y(),
               WithinAbs(0.161 * 75.0 * kStandardGravity, 1e-9));
    CHECK(held.leftover_couple_Nm.norm() < 1e-9);
}

TEST_CASE("A turning pull is answered by the feet's friction couple", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(90);
    body_case.resistances = {
        {"push", PartnerPush{{Segment::right_hand, Spot::grip, 0.0, Vec3::Zero()},
                             Vec3(0.0, 0.0, -1.0),
                             20.0,
                             false}}};
    const BodyResult result = solve_body(body_case).value();
    CHECK(result.leftover_couple_Nm.norm() < 1e-9);
    CHECK(std::abs(contact_force(result, 0)->couple_Nm.y()) > 1.0);
}

TEST_CASE("A support that cannot be computed with is refused by its key", "[balance]") {
    BodyCase body_case = standing(winter_body());
    body_case.support = OnContacts{{}, kSoleFriction};
    CHECK(solve_body(body_case).error().key == "support.contacts");
    body_case.support = OnContacts{{{Segment::head, Patch::sole, {}}}, kSoleFriction};
    CHECK(solve_body(body_case).error().key == "support.contacts[0].segment");
    body_case.support = OnContacts{{{Segment::left_foot, Patch::sole, 1.5}}, kSoleFriction};
    CHECK(solve_body(body_case).error().key == "support.contacts[0].pressure_at");
    body_case.support = OnContacts{{{Segment::left_foot, Patch::sole, {}}}, 0.0};
    CHECK(solve_body(body_case).error().key == "support.friction");
}

} // namespace steelyard::mechanics
