// Whatever number goes wrong, the answer is a fault with a key or a result of finite numbers.

#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/lever/random_lever.h"
#include "mechanics/range/sweep.h"

#include <cmath>
#include <functional>
#include <limits>

namespace steelyard::mechanics {

namespace {

constexpr int kTries = 20000;

BodyPoint grip(Segment hand) {
    return {hand, Spot::grip, 0.0, Vec3::Zero()};
}

/// One of each resistance.
BodyCase rich_case() {
    BodyCase body_case = standing(de_leva_male());
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(60);
    body_case.resistances = {
        {"dumbbell", Dumbbell{Segment::right_hand, 5.0}},
        {"bar", Barbell{20.0, BodyPoint{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}}},
        {"bell", Kettlebell{Segment::left_hand, 8.0, 0.12, true, -Vec3::UnitY()}},
        {"cuff", Cuff{}},
        {"machine", PlateMachine{}},
        {"cable", Cable{grip(Segment::left_hand), Vec3(1.0, 0.5, -0.3), 30.0}},
        {"band", Band{grip(Segment::left_hand), Vec3(0.3, 0.2, -0.3), 0.3,
                      TableBand{{{1.0, 30.0}, {6.0, 45.0}}}}},
        {"push", PartnerPush{}}};
    std::get<OnContacts>(body_case.support).contacts[0].pressure_at = 0.5;
    return body_case;
}

template <typename Kind> Kind& kind_of(BodyCase& body_case, std::size_t index) {
    return std::get<Kind>(body_case.resistances[index].kind);
}

/// Every place where a single number of a case can go wrong.
std::vector<double*> numbers_of(BodyCase& c, Motion& motion, RandomNumbers& random) {
    SegmentBody& segment = c.body.segments[random.below(kSegmentCount)];
    const auto part = static_cast<Eigen::Index>(random.below(3));
    auto& contacts = std::get<OnContacts>(c.support);
    auto& band = kind_of<Band>(c, 6);
    auto& machine = kind_of<PlateMachine>(c, 4);
    return {&segment.mass_kg,
            &segment.com_m[part],
            &segment.joint_m[part],
            &segment.tip_m[part],
            &segment.inertia_kg_m2(part, 0),
            &c.body.height_m,
            &c.body.ankle_height_m,
            &c.body.grip_from_wrist_m,
            &c.body.fingertip_from_wrist_m,
            &c.body.toe_tip_before_ball_m,
            &c.pose.angle_rad[random.below(kHingeCount)],
            &c.pose.anchor.at_m[part],
            &c.pose.anchor.lean_rad,
            &c.pose.anchor.point.offset_m[part],
            &c.gravity_m_s2,
            &contacts.friction,
            &*contacts.contacts[0].pressure_at,
            &kind_of<Dumbbell>(c, 0).mass_kg,
            &kind_of<Barbell>(c, 1).resting_on->offset_m[part],
            &kind_of<Kettlebell>(c, 2).offset_m,
            &kind_of<Kettlebell>(c, 2).direction[part],
            &kind_of<Cuff>(c, 3).at.along,
            &machine.stack_kg,
            &machine.cam[0].radius_m,
            &machine.cam[0].angle_rad,
            &machine.pad.along,
            &kind_of<Cable>(c, 5).pulley_m[part],
            &kind_of<Cable>(c, 5).tension_N,
            &band.slack_length_m,
            &std::get<Vec3>(band.anchor)[part],
            &std::get<TableBand>(band.law).entries[1].stretch,
            &std::get<TableBand>(band.law).entries[0].force_N,
            &kind_of<PartnerPush>(c, 7).direction[part],
            &kind_of<PartnerPush>(c, 7).force_N,
            &motion.rate_rad_s[random.below(kHingeCount)],
            &motion.acceleration_rad_s2[random.below(kHingeCount)]};
}

double odd_number(RandomNumbers& random) {
    const std::array<double, 10> odd{std::numeric_limits<double>::quiet_NaN(),
                                     std::numeric_limits<double>::infinity(),
                                     -std::numeric_limits<double>::infinity(),
                                     1.0e308,
                                     -1.0e308,
                                     -1.0,
                                     0.0,
                                     1.0e-300,
                                     1.0e9,
                                     random.between(-10.0, 10.0)};
    return odd[random.below(odd.size())];
}

bool all_finite(const BodyResult& result) {
    bool finite =
        result.leftover_force_N.allFinite() && result.leftover_couple_Nm.allFinite() &&
        result.centre_of_mass_m.allFinite() && result.ground.reaction_N.allFinite() &&
        result.ground.centre_of_pressure_m.allFinite() && result.ground.unbalanced_Nm.allFinite() &&
        std::isfinite(result.ground.needed_friction) && std::isfinite(result.ground.beyond_edge_m);
    for (std::size_t i = 0; i < kHingeCount; ++i)
        finite =
            finite && std::isfinite(result.external_Nm[i]) && std::isfinite(result.muscle_Nm[i]);
    for (const BodyForce& force : result.forces)
        finite = finite && force.point_m.allFinite() && force.force_N.allFinite() &&
                 force.couple_Nm.allFinite();
    for (const SegmentFrame& frame : result.placement.segments)
        finite = finite && frame.rotation.allFinite() && frame.com_m.allFinite();
    return finite;
}

} // namespace

TEST_CASE("One wrong number gives a fault with a key, or a finite result", "[bad input]") {
    RandomNumbers random(4711);
    int refused = 0;
    for (int i = 0; i < kTries; ++i) {
        BodyCase body_case = rich_case();
        Motion motion;
        const std::vector<double*> numbers = numbers_of(body_case, motion, random);
        const std::size_t place = random.below(numbers.size());
        *numbers[place] = odd_number(random);
        CAPTURE(i, place, *numbers[place]);
        const auto result =
            random.one_in(2) ? solve_body(body_case, motion) : solve_body(body_case);
        if (!result) {
            ++refused;
            REQUIRE_FALSE(result.error().key.empty());
            REQUIRE_FALSE(result.error().expected.empty());
        } else {
            REQUIRE(all_finite(*result));
        }
    }
    // Most of the odd numbers cannot be meant.
    CHECK(refused > kTries / 3);
    CHECK(solve_body(rich_case()).has_value());
}

TEST_CASE("A name that is none is refused, not followed", "[bad input]") {
    const auto nowhere = static_cast<Segment>(200);
    const auto fault_of = [](const std::function<void(BodyCase&)>& change) {
        BodyCase body_case = rich_case();
        change(body_case);
        const auto result = solve_body(body_case);
        return result ? MechanicsError{} : result.error();
    };
    CHECK(fault_of([&](BodyCase& c) { c.pose.anchor.point.segment = nowhere; }).key ==
          "pose.anchor.segment");
    CHECK(fault_of([&](BodyCase& c) { c.support = Held{nowhere}; }).key == "support.segment");
    CHECK(fault_of([&](BodyCase& c) {
              std::get<OnContacts>(c.support).contacts[1].segment = nowhere;
          }).key == "support.contacts[1].segment");
    CHECK(fault_of([&](BodyCase& c) { kind_of<Dumbbell>(c, 0).hand = nowhere; }).key ==
          "resistances[0].hand");
    CHECK(fault_of([&](BodyCase& c) { kind_of<Cable>(c, 5).at.segment = nowhere; }).key ==
          "resistances[5].at.segment");
    CHECK(fault_of([&](BodyCase& c) {
              kind_of<PlateMachine>(c, 4).hinge = static_cast<Hinge>(99);
          }).key == "resistances[4].hinge");
}

TEST_CASE("No contact, one, or six carry the body without a number going wrong", "[bad input]") {
    // Contacts anywhere, whatever the pose: balanced or not, every number stays finite.
    RandomNumbers random(815);
    const std::array<Contact, 10> contacts{{{Segment::right_foot, Patch::sole, {}},
                                            {Segment::left_foot, Patch::ball, 0.3},
                                            {Segment::right_toes, Patch::toes, {}},
                                            {Segment::left_hand, Patch::palm, {}},
                                            {Segment::right_hand, Patch::palm, 1.0},
                                            {Segment::pelvis, Patch::seat, {}},
                                            {Segment::left_shank, Patch::knee, {}},
                                            {Segment::trunk, Patch::back, {}},
                                            {Segment::left_foot, Patch::sole, 0.0},
                                            {Segment::left_foot, Patch::sole, {}}}};
    for (int i = 0; i < 5000; ++i) {
        BodyCase body_case = standing(winter_body());
        OnContacts support{{}, kSoleFriction};
        for (std::size_t n = 1 + random.below(kMaxContacts); n > 0; --n)
            support.contacts.push_back(contacts[random.below(contacts.size())]);
        body_case.support = support;
        for (const HingeInfo& hinge : all_hinges())
            body_case.pose[hinge.hinge] = random.between(hinge.least_rad, hinge.most_rad);
        const auto result = solve_body(body_case);
        REQUIRE(result.has_value());
        REQUIRE(all_finite(*result));
        double upward_N = 0.0;
        for (const BodyForce& force : result->forces)
            upward_N += force.force_N.y();
        // Whatever the shares, together the contacts carry the weight, and none pulls.
        REQUIRE(std::abs(upward_N - 75.0 * kStandardGravity) < 1e-8);
        for (const BodyForce& force : result->forces)
            REQUIRE(force.force_N.y() >= -1e-9);
        if (result->ground.status == BalanceStatus::balanced)
            REQUIRE(result->leftover_couple_Nm.norm() < 0.5);
    }
}

} // namespace steelyard::mechanics
