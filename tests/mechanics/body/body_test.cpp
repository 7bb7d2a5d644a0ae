#include "catch.h"
#include "mechanics/body/body.h"
#include "mechanics/body/published_tables.h"

#include <cmath>
#include <limits>

namespace steelyard::mechanics {

namespace {

double sum_of_masses(const Body& body) {
    double sum_kg = 0.0;
    for (const SegmentBody& segment : body.segments)
        sum_kg += segment.mass_kg;
    return sum_kg;
}

/// de Leva's man is 1.741 m tall. His legs leave 1.741 - (0.039 x 1.741 + 0.4403 + 0.4222) m for
/// trunk and head, whose printed lengths are 0.6033 + 0.2429 m.
const double kFit = (1.741 - (0.039 * 1.741 + 0.4403 + 0.4222)) / (0.6033 + 0.2429);

/// Sums of at most 17 rounded products.
constexpr double kRounding = 1.0e-12;

} // namespace

TEST_CASE("The segments of a body add up to its mass", "[body]") {
    for (const SegmentTable& table : {de_leva(), winter()})
        for (const Sex sex : {Sex::female, Sex::male}) {
            const Body body = body_from(table, sex, 1.68, 64.0).value();
            CHECK_THAT(sum_of_masses(body), WithinRel(64.0, kRounding));
        }
}

TEST_CASE("The tables' printed fractions add up to one body", "[body]") {
    // de Leva 1996 Table 4: men 100.00 %, women 99.99 %; Winter: 1.000 (published-values 2a, 2b).
    const auto total = [](const SegmentColumn& c) {
        double trunk = 0.0;
        for (const SegmentRow& slice : c.trunk)
            trunk += slice.mass_fraction;
        return c.head.mass_fraction + trunk +
               2.0 * (c.upper_arm.mass_fraction + c.forearm.mass_fraction + c.hand.mass_fraction +
                      c.thigh.mass_fraction + c.shank.mass_fraction + c.foot.mass_fraction);
    };
    CHECK_THAT(total(de_leva().male), WithinAbs(1.0, 1e-9));
    CHECK_THAT(total(de_leva().female), WithinAbs(0.9999, 1e-9));
    CHECK_THAT(total(winter().male), WithinAbs(1.0, 1e-9));
}

TEST_CASE("Lengths grow with height and masses with body mass", "[body]") {
    const Body small = body_from(de_leva(), Sex::male, 1.741, 73.0).value();
    const Body tall = body_from(de_leva(), Sex::male, 2.0 * 1.2, 146.0).value();
    const double stretch = 2.4 / 1.741;
    // The printed reference body: forearm 268.9 mm, 1.62 % of 73.0 kg.
    CHECK_THAT(small[Segment::right_forearm].length_m, WithinAbs(0.2689, 1e-12));
    CHECK_THAT(small[Segment::right_forearm].mass_kg, WithinAbs(0.0162 * 73.0, 1e-9));
    CHECK_THAT(tall[Segment::left_thigh].length_m, WithinRel(0.4222 * stretch, kRounding));
    CHECK_THAT(tall[Segment::left_thigh].mass_kg, WithinRel(2.0 * 0.1416 * 73.0, 1e-9));
}

TEST_CASE("A limb's inertia follows from its printed radius of gyration", "[body]") {
    const SegmentBody shank = de_leva_male()[Segment::right_shank];
    // By hand: mass 0.0433 x 73 = 3.1609 kg, radius 0.246 x 0.4403 = 0.108314 m.
    CHECK_THAT(shank.inertia_kg_m2(2, 2), WithinAbs(3.1609 * 0.108314 * 0.108314, 1e-6));
    CHECK(shank.inertia_kg_m2(0, 1) == 0.0);
}

TEST_CASE("Dividing the trunk at the lumbar joint keeps its mass and its centre of mass",
          "[body]") {
    const Body body = de_leva_male();
    const SegmentBody& pelvis = body[Segment::pelvis];
    const SegmentBody& trunk = body[Segment::trunk];
    const double mass_kg = pelvis.mass_kg + trunk.mass_kg;
    CHECK_THAT(mass_kg, WithinAbs(0.4346 * 73.0, 1e-9));

    const double height_m = (pelvis.mass_kg * pelvis.com_m.y() +
                             trunk.mass_kg * (trunk.joint_m.y() + trunk.com_m.y())) /
                            mass_kg;
    // By hand from the three printed slices: (15.96 x 51.19 + 16.33 x 267.72 + 11.17 x 475.30) /
    // 43.46 = 241.55 mm below the suprasternale, which is 531.9 mm above the hips; fitted.
    CHECK_THAT(height_m, WithinAbs(kFit * (0.5319 - 0.24155), 2e-5));
    // The table's whole-trunk row has 44.86 %: it differs from its own slices by 3 mm.
    CHECK_THAT(height_m, WithinAbs(kFit * 0.5319 * (1.0 - 0.4486), 3.5e-3));

    // The slices' own weights add up to the whole trunk's printed radius of gyration (34.7 %).
    const auto about = [&](const SegmentBody& s, double com_m) {
        const double arm_m = com_m - height_m;
        return s.inertia_kg_m2(2, 2) + s.mass_kg * arm_m * arm_m;
    };
    const double inertia =
        about(pelvis, pelvis.com_m.y()) + about(trunk, trunk.joint_m.y() + trunk.com_m.y());
    CHECK_THAT(std::sqrt(inertia / mass_kg) / (kFit * 0.5319), WithinAbs(0.347, 0.006));
}

TEST_CASE("Cutting a foot at its ball keeps its mass, centre and inertia", "[body]") {
    const Body body = de_leva_male();
    const SegmentBody& foot = body[Segment::right_foot];
    const SegmentBody& toes = body[Segment::right_toes];
    const double mass_kg = foot.mass_kg + toes.mass_kg;
    CHECK_THAT(mass_kg, WithinRel(0.0137 * 73.0, 1e-9));
    const double com_m =
        (foot.mass_kg * foot.com_m.x() + toes.mass_kg * (toes.joint_m.x() + toes.com_m.x())) /
        mass_kg;
    CHECK_THAT(com_m + body.heel_behind_ankle_m, WithinAbs(0.4415 * 0.2581, 1e-9));
    const auto about = [&](const SegmentBody& s, double x_m) {
        return s.inertia_kg_m2(2, 2) + s.mass_kg * (x_m - com_m) * (x_m - com_m);
    };
    const double inertia =
        about(foot, foot.com_m.x()) + about(toes, toes.joint_m.x() + toes.com_m.x());
    CHECK_THAT(std::sqrt(inertia / mass_kg) / 0.2581, WithinAbs(0.245, 1e-6));
}

TEST_CASE("Standing height comes out of the parts", "[body]") {
    // Winter with Drillis & Contini: 0.039 + 0.246 + 0.245 + 0.288 + 0.182 = 1.000 of stature.
    const Body body = winter_body();
    const Placement placement = place(body, Pose{});
    const double vertex_m = placement[Segment::head].at(body[Segment::head].tip_m).y();
    CHECK_THAT(vertex_m, WithinAbs(1.75, 1e-12));
}

TEST_CASE("Whoever stands upright is as tall as was typed", "[body]") {
    for (const SegmentTable& table : {de_leva(), winter()})
        for (const Sex sex : {Sex::female, Sex::male})
            for (const double height_m : {1.5, 1.741, 2.02}) {
                const Body body = body_from(table, sex, height_m, 70.0).value();
                const Vec3 vertex_m =
                    place(body, Pose{})[Segment::head].at(body[Segment::head].tip_m);
                CHECK_THAT(vertex_m.y(), WithinAbs(height_m, 1e-12));
            }
}

TEST_CASE("The limbs keep the table's lengths when trunk and head are fitted", "[body]") {
    const Body body = de_leva_male();
    CHECK_THAT(body[Segment::right_thigh].length_m, WithinAbs(0.4222, 1e-12));
    CHECK_THAT(body[Segment::right_upper_arm].length_m, WithinAbs(0.2817, 1e-12));
    CHECK_THAT(body[Segment::head].length_m, WithinAbs(kFit * 0.2429, 1e-12));
}

TEST_CASE("The whole-body centre of mass lies at 55 to 58 per cent of the height", "[body]") {
    // From memory (anatomy texts: just in front of the second sacral vertebra, 55 to 58 %).
    for (const SegmentTable& table : {de_leva(), winter()})
        for (const Sex sex : {Sex::female, Sex::male}) {
            const Body body = body_from(table, sex, 1.75, 70.0).value();
            const double height_m = centre_of_mass(body, place(body, Pose{})).y();
            CHECK(height_m / 1.75 > 0.545);
            CHECK(height_m / 1.75 < 0.585);
        }
}

TEST_CASE("A measured length replaces the table's", "[body]") {
    const std::vector<MeasuredValue> measured{{TablePart::forearm, Measure::length_m, 0.30},
                                              {TablePart::trunk, Measure::length_m, 0.55}};
    const Body body = body_from(de_leva(), Sex::male, 1.741, 73.0, measured).value();
    CHECK_THAT(body[Segment::left_forearm].length_m, WithinAbs(0.30, 1e-12));
    CHECK_THAT(-body[Segment::left_forearm].com_m.y(), WithinAbs(0.30 * 0.4574, 1e-12));
    const double neck_m = body[Segment::pelvis].length_m + body[Segment::trunk].length_m;
    CHECK_THAT(neck_m, WithinAbs(0.55, 1e-12));
}

TEST_CASE("A measured mass leaves the body's mass as it is", "[body]") {
    const Body body =
        body_from(de_leva(), Sex::male, 1.741, 73.0, {{TablePart::thigh, Measure::mass_kg, 9.0}})
            .value();
    CHECK_THAT(body[Segment::right_thigh].mass_kg, WithinRel(9.0, kRounding));
    CHECK_THAT(sum_of_masses(body), WithinRel(73.0, kRounding));
    // The others keep their proportions.
    const Body before = de_leva_male();
    CHECK_THAT(
        body[Segment::head].mass_kg / body[Segment::right_shank].mass_kg,
        WithinRel(before[Segment::head].mass_kg / before[Segment::right_shank].mass_kg, kRounding));
}

TEST_CASE("A body that cannot be meant is refused by name", "[body]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto fault_of = [](double height_m, double mass_kg,
                             const std::vector<MeasuredValue>& measured = {}) {
        return body_from(de_leva(), Sex::female, height_m, mass_kg, measured).error();
    };
    CHECK(fault_of(-1.7, 60.0).key == "height");
    CHECK(fault_of(nan, 60.0).fault == Fault::not_finite);
    CHECK(fault_of(1.7, -60.0).key == "mass");
    CHECK(fault_of(1.7, 1.0e9).fault == Fault::out_of_range);
    CHECK(fault_of(1.7, 60.0, {{TablePart::hand, Measure::length_m, nan}}).key ==
          "measured[0].value");
    CHECK(fault_of(1.7, 60.0, {{TablePart::hand, Measure::mass_kg, 40.0}}).key ==
          "measured[0].value");
    CHECK(fault_of(1.7, 60.0,
                   {{TablePart::thigh, Measure::mass_kg, 20.0},
                    {TablePart::shank, Measure::mass_kg, 20.0}})
              .key == "measured");
    CHECK(fault_of(1.7, 60.0,
                   {{TablePart::foot, Measure::length_m, 0.2},
                    {TablePart::foot, Measure::length_m, 0.3}})
              .key == "measured[1]");
    CHECK(fault_of(1.7, 60.0, {{TablePart::trunk, Measure::com_fraction, 0.5}}).key ==
          "measured[0].measure");
}

TEST_CASE("A table that cannot be meant is refused by its row", "[body]") {
    const auto fault_of = [](auto change) {
        SegmentTable table = de_leva();
        change(table.male);
        return body_from(table, Sex::male, 1.7, 60.0).error();
    };
    CHECK(fault_of([](SegmentColumn& c) { c.head.mass_fraction = -0.1; }).key == "table.head.mass");
    CHECK(fault_of([](SegmentColumn& c) { c.trunk[1].length_m = 0.0; }).key ==
          "table.trunk[1].length");
    CHECK(fault_of([](SegmentColumn& c) { c.foot.com_fraction = 0.9; }).key == "table.foot.com");
    CHECK(fault_of([](SegmentColumn& c) { c.trunk.clear(); }).key == "table.trunk");
    CHECK(fault_of([](SegmentColumn& c) { c.ball_from_heel_m = 0.9; }).key ==
          "table.ball_from_heel");
    CHECK(fault_of([](SegmentColumn& c) { c.lumbar_height_m = 0.8; }).key == "table.lumbar_height");
    CHECK(fault_of([](SegmentColumn& c) {
              c.thigh.gyration.y() = std::numeric_limits<double>::infinity();
          }).fault == Fault::not_finite);
}

TEST_CASE("A spot belongs to the parts that have it", "[body]") {
    const Body body = winter_body();
    CHECK(local_point(body, {Segment::left_hand, Spot::grip, 0.0, Vec3::Zero()}).has_value());
    const auto wrong = local_point(body, {Segment::head, Spot::grip, 0.0, Vec3::Zero()});
    REQUIRE_FALSE(wrong.has_value());
    CHECK(wrong.error().expected == "a hand for this spot");
    CHECK_FALSE(local_point(body, {Segment::left_shank, Spot::along, 3.0, Vec3::Zero()}));
    // Half way along the thigh, by hand: 0.5 x 0.245 x 1.75 = 0.214375 m below the hip.
    const Vec3 middle = *local_point(body, {Segment::left_thigh, Spot::along, 0.5, Vec3::Zero()});
    CHECK_THAT(middle.y(), WithinAbs(-0.214375, 1e-12));
}

TEST_CASE("Names of segments, joints, hinges and spots lead back to them", "[body]") {
    for (const SegmentInfo& info : all_segments())
        CHECK(segment_named(info.name) == info.segment);
    for (const JointInfo& info : all_joints()) {
        CHECK(joint_named(info.name) == info.joint);
        CHECK(joint_of(info.segment) == info.joint);
    }
    for (const HingeInfo& info : all_hinges()) {
        CHECK(hinge_named(info.name) == info.hinge);
        CHECK(hinge_info(info.mirror).mirror == info.hinge);
        CHECK(info.least_rad < 0.0);
        CHECK(info.most_rad > 0.0);
    }
    CHECK_FALSE(hinge_named("right_elbow"));
    CHECK(spot_named("upper_back") == Spot::upper_back);
    CHECK(spot_name(Spot::toe_tip) == "toe_tip");
    CHECK(table_part_named("upper_arm") == TablePart::upper_arm);
    CHECK(patch_named("palm") == Patch::palm);
    CHECK_FALSE(joint_of(Segment::pelvis));
}

} // namespace steelyard::mechanics
