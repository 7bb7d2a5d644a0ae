#include "catch.h"
#include "mechanics/constants.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <cmath>
#include <limits>

using namespace steelyard::mechanics;

namespace {

ArmSource table(std::vector<ArmKnot> knots, double spread_m = 0.0) {
    return {ArmTable{std::move(knots)}, spread_m, {"made up for the test", Evidence::memory}};
}

} // namespace

TEST_CASE("a table gives its own numbers at its own angles", "[muscle][arm]") {
    const ArmSource source = table({{0.0, 0.040}, {0.5, 0.042}, {1.0, 0.030}});
    CHECK(arm_by_source(source, 0.0) == 0.040);
    CHECK_THAT(arm_by_source(source, 0.5), WithinAbs(0.042, 1e-15)); // one rounding
    CHECK(arm_by_source(source, 1.0) == 0.030);
}

TEST_CASE("between two knots the arm never leaves what lies between them", "[muscle][arm]") {
    const std::vector<ArmKnot> knots{{0.0, 0.040}, {0.3, 0.041}, {0.5, 0.060}, {1.4, 0.060}};
    const ArmSource source = table(knots);
    for (std::size_t i = 0; i + 1 < knots.size(); ++i)
        for (int step = 0; step <= 50; ++step) {
            const double angle =
                knots[i].angle_rad + (knots[i + 1].angle_rad - knots[i].angle_rad) * step / 50.0;
            const double arm_m = arm_by_source(source, angle);
            CHECK(arm_m >= knots[i].arm_m - 1e-15); // rounding
            CHECK(arm_m <= knots[i + 1].arm_m + 1e-15);
        }
}

TEST_CASE("between unevenly spaced knots the slopes are weighed by both steps", "[muscle][arm]") {
    // Worked by hand after Fritsch & Butland 1984 (SIAM J Sci Stat Comput 5:300; from memory), arms
    // in units of 1 cm above 2 cm: steps 1 and 2, chords 1 and 1/2. Slope at the middle knot
    // (5 + 4) / (5 / 1 + 4 / (1/2)) = 9/13; at the first one ((2 + 2) 1 - 1/2) / 3 = 7/6.
    // Half-way between them: 1/2 + (7/6 - 9/13) / 8.
    const ArmSource source = table({{0.0, 0.02}, {1.0, 0.03}, {3.0, 0.04}});
    const double half_way = 0.5 + (7.0 / 6.0 - 9.0 / 13.0) / 8.0;
    CHECK_THAT(arm_by_source(source, 0.5), WithinAbs(0.02 + 0.01 * half_way, 1e-15)); // rounding
}

TEST_CASE("past the ends of a source the nearest valid arm is used, and the reading says so",
          "[muscle][arm]") {
    const ArmSource line{ArmPolynomial{{0.010, 0.020}, {0.0, 1.0}}, 0.0, {}};
    CHECK_THAT(arm_by_source(line, 2.0), WithinAbs(0.030, 1e-15));
    CHECK_THAT(arm_by_source(line, -1.0), WithinAbs(0.010, 1e-15));
    CHECK(arm_at({line}, 2.0).clamped);
    CHECK_FALSE(arm_at({line}, 0.5).clamped);
    CHECK_FALSE(arm_at({table({{0.0, 0.04}})}, 2.0).clamped); // a constant states no range to leave
}

TEST_CASE("where sources disagree the reading spans them all with their spreads", "[muscle][arm]") {
    const std::vector<ArmSource> sources{table({{0.0, 0.040}}), table({{0.0, 0.0369}}, 0.0019),
                                         table({{0.0, 0.057}})};
    const ArmReading reading = arm_at(sources, 0.1);
    CHECK(reading.arm_m == 0.040);
    CHECK_THAT(reading.range_m.low, WithinAbs(0.0350, 1e-15));
    CHECK_THAT(reading.range_m.high, WithinAbs(0.057, 1e-15));
}

TEST_CASE("arms that cannot be computed with are refused by name", "[muscle][arm]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto fault_of = [](const ArmSource& source) {
        const auto checked = check_arm_sources({source}, "arm");
        REQUIRE_FALSE(checked);
        return checked.error();
    };
    CHECK(fault_of(table({})).fault == Fault::inconsistent);
    CHECK(fault_of(table({{0.5, 0.04}, {0.5, 0.05}})).key == "arm[0][1]");
    CHECK(fault_of(table({{0.0, nan}})).fault == Fault::not_finite);
    CHECK(fault_of(table({{0.0, 0.04}}, -0.001)).key == "arm[0].spread");
    CHECK(fault_of(table({{0.0, 0.9}})).fault == Fault::out_of_range);
    const ArmSource runs_away{ArmPolynomial{{0.0, 1.0}, {0.0, 2.0}}, 0.0, {}};
    CHECK(fault_of(runs_away).fault == Fault::out_of_range);
    const ArmSource backwards{ArmPolynomial{{0.01}, {1.0, 0.0}}, 0.0, {}};
    CHECK(fault_of(backwards).key == "arm[0].valid");
    CHECK_FALSE(check_arm_sources({}, "arm"));
}

TEST_CASE("a source counts only in the poses in which it was found", "[arms]") {
    const PoseRange hanging{Hinge::right_shoulder_flexion, {-0.5, 0.5}};
    const PoseRange forward{Hinge::right_shoulder_flexion, {1.0, 2.0}};
    const std::vector<ArmSource> sources{{ArmTable{{{0.0, 0.02}}},
                                          0.001,
                                          {"hanging", Evidence::verified},
                                          Basis::measured,
                                          {hanging}},
                                         {ArmTable{{{0.0, -0.05}}},
                                          0.0,
                                          {"forward", Evidence::memory},
                                          Basis::illustrative,
                                          {forward}},
                                         {ArmTable{{{0.0, 0.03}}},
                                          0.0,
                                          {"hanging, too", Evidence::verified},
                                          Basis::open_model,
                                          {hanging}}};
    Pose pose;
    const auto low = arm_in_pose(sources, 0.3, {pose, false});
    REQUIRE(low);
    CHECK(low->arm_m == 0.02);
    CHECK(low->source == 0);
    CHECK(low->range_m.low == 0.02 - 0.001); // the arm of the other plane does not widen it
    CHECK(low->range_m.high == 0.03);
    pose[Hinge::right_shoulder_flexion] = 1.5;
    const auto raised = arm_in_pose(sources, 0.3, {pose, false});
    REQUIRE(raised);
    CHECK(raised->arm_m == -0.05);
    CHECK(raised->source == 1);
    pose[Hinge::right_shoulder_flexion] = 0.8;
    CHECK_FALSE(arm_in_pose(sources, 0.3, {pose, false})); // no table for this position
    // For the left side the left shoulder decides.
    CHECK(arm_in_pose(sources, 0.3, {pose, true})->source == 0);
}
