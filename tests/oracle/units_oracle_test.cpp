// Unit factors against the values printed in NIST SP 811 (2008), Appendix B.8 and its footnotes.

#include "catch.h"
#include "setup/units/units.h"

using namespace steelyard::setup;

namespace {

double read(const char* text, Dimension wanted) {
    const auto value = parse_quantity(text, wanted);
    REQUIRE(value.has_value());
    return *value;
}

/// Factors that SP 811 gives as exact must be hit to the last bit but one (one rounding of the
/// product).
constexpr double kExact = 2.3e-16;

} // namespace

TEST_CASE("exact factors equal those of NIST SP 811", "[units][oracle]") {
    CHECK(read("1 in", Dimension::length) == Approx(0.0254).epsilon(kExact));
    CHECK(read("1 ft", Dimension::length) == Approx(0.3048).epsilon(kExact));
    CHECK(read("1 yd", Dimension::length) == Approx(0.9144).epsilon(kExact));
    CHECK(read("1 lb", Dimension::mass) == Approx(0.45359237).epsilon(kExact));
    CHECK(read("1 kgf", Dimension::force) == Approx(9.80665).epsilon(kExact));
    CHECK(read("1 lbf", Dimension::force) == Approx(4.4482216152605).epsilon(kExact));
    CHECK(read("1 mph", Dimension::speed) == Approx(0.44704).epsilon(kExact));
}

TEST_CASE("factors that NIST SP 811 prints rounded agree to the printed digits",
          "[units][oracle]") {
    // Half a unit of the seventh printed figure.
    const auto printed = [](double value) { return Approx(value).epsilon(5e-7); };
    CHECK(read("1 oz", Dimension::mass) == printed(2.834952e-2));
    CHECK(read("1 ozf", Dimension::force) == printed(2.780139e-1));
    CHECK(read("1 ft·lbf", Dimension::torque) == printed(1.355818));
    CHECK(read("1 in·lbf", Dimension::torque) == printed(1.129848e-1));
    CHECK(read("1 in·ozf", Dimension::torque) == printed(7.061552e-3));
    CHECK(read("1 lbf/ft", Dimension::stiffness) == printed(1.459390e1));
    CHECK(read("1 lbf/in", Dimension::stiffness) == printed(1.751268e2));
    CHECK(read("1°", Dimension::angle) == printed(1.745329e-2));
    CHECK(read("1 rpm", Dimension::angular_speed) == printed(1.047198e-1));
    CHECK(read("1 km/h", Dimension::speed) == printed(2.777778e-1));
}

TEST_CASE("the foot-pound is the product of its exact parts", "[units][oracle]") {
    // 4.448 221 615 260 5 N × 0.3048 m = 1.355 817 948 331 400 4 N·m, by long multiplication.
    CHECK(read("1 ft·lbf", Dimension::torque) == 1.3558179483314004);
    CHECK(
        read("1 ft·lbf", Dimension::torque) ==
        Approx(read("1 lbf", Dimension::force) * read("1 ft", Dimension::length)).epsilon(kExact));
    CHECK(read("12 in·lbf", Dimension::torque) == 1.3558179483314004);
}

TEST_CASE("a textbook's own conversions come out", "[units][oracle]") {
    // OpenStax University Physics vol. 1, Example 12.4: 50.0 lb is 222.4 N (printed figures).
    CHECK(read("50.0 lbf", Dimension::force) == Approx(222.4).epsilon(0.05 / 222.4));
    // OpenStax College Physics 2e, problem 9.2: 23.1 N·m is 17.0 ft·lb (half a last figure).
    CHECK(from_SI(23.1, Dimension::torque, "ft·lbf") == Approx(17.0).epsilon(0.05 / 17.0));
}
