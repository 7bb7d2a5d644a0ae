#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/range/spread.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

SpreadInput winter_input() {
    SpreadInput input;
    input.column = winter().male;
    input.height_m = 1.75;
    input.mass_kg = 75.0;
    input.bodies = 2000;
    return input;
}

BodyCase arm_forward() {
    BodyCase body_case = standing(winter_body());
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(90);
    return body_case;
}

double shoulder(const BodyResult& result) {
    return result.muscle(Hinge::right_shoulder_flexion);
}

} // namespace

TEST_CASE("The generator gives the number that the standard states", "[random]") {
    // ISO/IEC 14882 [rand.predef]: the 10000th number of a default-constructed mt19937_64.
    Random random;
    random.discard(9999);
    CHECK(random() == 9981545732273789042u);
}

TEST_CASE("Nearly normal numbers have the mean and spread of normal ones", "[random]") {
    Random random(7);
    const int count = 200000;
    double sum = 0.0;
    double squares = 0.0;
    int beyond = 0;
    for (int i = 0; i < count; ++i) {
        const double x = nearly_normal(random);
        sum += x;
        squares += x * x;
        beyond += std::abs(x) > 1.6449 ? 1 : 0;
    }
    // Standard errors: 1/sqrt(n) = 0.0022, sqrt(2/n) = 0.0032; four of them.
    CHECK_THAT(sum / count, WithinAbs(0.0, 0.009));
    CHECK_THAT(squares / count, WithinAbs(1.0, 0.013));
    // Ten of a hundred normal numbers lie beyond ±1.6449.
    CHECK_THAT(static_cast<double>(beyond) / count, WithinAbs(0.10, 0.004));
}

TEST_CASE("The same seed gives the same band, another seed nearly the same", "[spread]") {
    SpreadInput input = winter_input();
    const Band90 one = spread_of(input, arm_forward(), shoulder).value();
    const Band90 two = spread_of(input, arm_forward(), shoulder).value();
    CHECK(one.low == two.low);
    CHECK(one.high == two.high);
    input.seed = 99;
    const Band90 other = spread_of(input, arm_forward(), shoulder).value();
    CHECK(other.low != one.low);
    // The error of a percentile of 2000 draws: about 3 % of the band's width.
    CHECK_THAT(other.low, WithinAbs(one.low, 0.1 * (one.high - one.low)));
    CHECK_THAT(other.high, WithinAbs(one.high, 0.1 * (one.high - one.low)));
}

TEST_CASE("The band surrounds the table's own result", "[spread]") {
    const Band90 band = spread_of(winter_input(), arm_forward(), shoulder).value();
    CHECK(band.low < 11.032);
    CHECK(band.high > 11.032);
    CHECK_THAT(band.middle, WithinAbs(11.032, 0.2));
    // A tenth to a quarter either way, for parameters that vary by 3 to 8 %.
    CHECK(band.high - band.low > 0.1 * 11.032);
    CHECK(band.high - band.low < 0.5 * 11.032);
}

TEST_CASE("Twice the variation gives twice the band, none gives the table's result", "[spread]") {
    SpreadInput input = winter_input();
    input.variation = {0.01, 0.01, 0.01, 0.01};
    const Band90 narrow = spread_of(input, arm_forward(), shoulder).value();
    input.variation = {0.02, 0.02, 0.02, 0.02};
    const Band90 wide = spread_of(input, arm_forward(), shoulder).value();
    CHECK_THAT((wide.high - wide.low) / (narrow.high - narrow.low), WithinAbs(2.0, 0.02));
    input.variation = {0.0, 0.0, 0.0, 0.0};
    const Band90 none = spread_of(input, arm_forward(), shoulder).value();
    CHECK_THAT(none.low, WithinAbs(11.032, 0.5e-3));
    CHECK_THAT(none.high - none.low, WithinAbs(0.0, 1e-9));
}

TEST_CASE("A dumbbell's torque varies only with the arm's length", "[spread]") {
    // Torque of a 50 kg dumbbell is weight x length; with lengths alone varying by 3 % the band of
    // two independent parts: upper arm 0.3255, forearm 0.2555, hand 0.0868 m.
    SpreadInput input = winter_input();
    input.bodies = 20000;
    input.variation = {0.03, 0.0, 0.0, 0.0};
    BodyCase body_case = arm_forward();
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 50.0}}};
    const Band90 band = spread_of(input, body_case, [](const BodyResult& result) {
                            return -arm_of(result, 0, Hinge::right_shoulder_flexion).torque_Nm;
                        }).value();
    const double deviation_m =
        0.03 * std::sqrt(0.3255 * 0.3255 + 0.2555 * 0.2555 + 0.0868 * 0.0868);
    const double half_Nm = 1.6449 * deviation_m * 50.0 * kStandardGravity;
    // Error of a percentile of 20000 draws, about 2 % of the half band.
    CHECK_THAT(0.5 * (band.high - band.low), WithinRel(half_Nm, 0.04));
}

TEST_CASE("A measured length does not vary", "[spread]") {
    SpreadInput input = winter_input();
    input.variation = {0.03, 0.0, 0.0, 0.0};
    input.measured = {{TablePart::forearm, Measure::length_m, 0.26}};
    BodyCase body_case = arm_forward();
    body_case.resistances = {
        {"cuff", Cuff{{Segment::right_forearm, Spot::along, 1.0, Vec3::Zero()}, 5.0}}};
    const Band90 band = spread_of(input, body_case, [](const BodyResult& result) {
                            return arm_of(result, 0, Hinge::right_elbow_flexion).arm_m;
                        }).value();
    CHECK_THAT(band.low, WithinAbs(0.26, 1e-12));
    CHECK_THAT(band.high, WithinAbs(0.26, 1e-12));
}

TEST_CASE("A spread that cannot be is refused by its key", "[spread]") {
    SpreadInput input = winter_input();
    input.bodies = 1;
    CHECK(spread_of(input, arm_forward(), shoulder).error().key == "bodies");
    input = winter_input();
    input.variation.mass = -0.1;
    CHECK(spread_of(input, arm_forward(), shoulder).error().key == "variation.mass");
    input = winter_input();
    input.height_m = 0.0;
    CHECK(spread_of(input, arm_forward(), shoulder).error().key == "height");
}

} // namespace steelyard::mechanics
