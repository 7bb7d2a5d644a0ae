// The functions of our own against the platform's: an independent implementation, right to a unit
// or so in the last place.

#include "catch.h"
#include "mechanics/constants.h"
#include "mechanics/portable.h"

#include <cmath>
#include <limits>
#include <random>

using namespace steelyard::mechanics;

namespace {

constexpr int kDraws = 200000;

/// How far apart two numbers are, in units of the second's last place.
double places_apart(double ours, double theirs) {
    if (ours == theirs)
        return 0.0;
    const double size = std::abs(theirs);
    const double place = std::nextafter(size, std::numeric_limits<double>::infinity()) - size;
    return std::abs(ours - theirs) / place;
}

class Numbers {
public:
    double within(double most) { return most * unit_(engine_); }
    /// Of either sign, from e⁻ᵐ to eᵐ in size.
    double of_any_size(double m) { return std::copysign(std::exp(within(m)), within(1.0)); }

private:
    std::mt19937_64 engine_{7};
    std::uniform_real_distribution<double> unit_{-1.0, 1.0};
};

} // namespace

TEST_CASE("sines and cosines are the C library's to the last digit", "[portable]") {
    // One unit in the last place of 1 is 2.2e-16.
    Numbers numbers;
    double worst = 0.0;
    for (int i = 0; i < kDraws; ++i) {
        for (const double angle_rad : {numbers.within(7.0), numbers.within(6000.0)}) {
            const portable::SineCosine both = portable::sine_cosine(angle_rad);
            worst = std::max({worst, std::abs(both.sine - std::sin(angle_rad)),
                              std::abs(both.cosine - std::cos(angle_rad))});
        }
    }
    CHECK(worst <= 2.3e-16);
    CHECK(portable::sin(0.0) == 0.0);
    CHECK(portable::cos(0.0) == 1.0);
    CHECK(portable::sin(0.5 * kPi) == 1.0);
    // The double nearest to a quarter turn misses it by 6.1e-17; we know the quarter to 1e-26.
    CHECK_THAT(portable::cos(0.5 * kPi), WithinAbs(std::cos(0.5 * kPi), 1e-26));
}

TEST_CASE("an angle of very many turns is taken modulo a turn", "[portable]") {
    // A million turns of the double nearest to 2π: back where it was, as far as a double tells.
    const double turns_rad = 1.0e6 * (2.0 * kPi);
    CHECK_THAT(portable::sin(turns_rad + 1.0), WithinAbs(std::sin(1.0), 1e-9)); // of 6e6, 15 digits
    for (const double angle_rad : {1.0e9, -1.0e300})
        CHECK(std::abs(portable::sin(angle_rad)) <= 1.0);
    CHECK(std::isnan(portable::sin(std::numeric_limits<double>::infinity())));
    CHECK(std::isnan(portable::cos(std::nan(""))));
}

TEST_CASE("tangents and their inverses are the C library's to a few last places", "[portable]") {
    Numbers numbers;
    double tangent = 0.0;
    double angle = 0.0;
    double inverse = 0.0;
    for (int i = 0; i < kDraws; ++i) {
        const double angle_rad = numbers.within(7.0);
        const double x = numbers.of_any_size(10.0);
        const double y = numbers.of_any_size(10.0);
        const double part = numbers.within(1.0);
        tangent = std::max(tangent, places_apart(portable::tan(angle_rad), std::tan(angle_rad)));
        angle = std::max({angle, places_apart(portable::atan2(y, x), std::atan2(y, x)),
                          places_apart(portable::atan(x), std::atan(x))});
        inverse = std::max({inverse, places_apart(portable::asin(part), std::asin(part)),
                            places_apart(portable::acos(part), std::acos(part))});
    }
    // As the header says.
    CHECK(tangent <= 3.0);
    CHECK(angle <= 2.0);
    CHECK(inverse <= 3.0);
}

TEST_CASE("an angle's quarter and the signs of zeros are the C library's", "[portable]") {
    for (const double y : {0.0, -0.0, 1.0, -1.0, 3.0})
        for (const double x : {0.0, -0.0, 1.0, -1.0, 3.0}) {
            CAPTURE(y, x);
            CHECK(places_apart(portable::atan2(y, x), std::atan2(y, x)) <= 1.0);
            CHECK(std::signbit(portable::atan2(y, x)) == std::signbit(std::atan2(y, x)));
        }
    CHECK(portable::atan2(1.0, 0.0) == 0.5 * kPi);
    CHECK(portable::atan2(0.0, -1.0) == kPi);
    CHECK(portable::acos(1.0) == 0.0);
    CHECK(portable::acos(-1.0) == kPi);
    CHECK(portable::asin(-1.0) == -0.5 * kPi);
    CHECK(std::isnan(portable::asin(1.0 + 1e-15)));
    CHECK(std::isnan(portable::acos(-1.1)));
}

TEST_CASE("powers are exact where they can be, and close where not", "[portable]") {
    for (int n = 0; n <= 22; ++n)
        CHECK(portable::pow(10.0, n) == std::pow(10.0, n));
    CHECK(portable::pow(2.0, -3.0) == 0.125);
    CHECK(portable::pow(-3.0, 3.0) == -27.0);
    CHECK(portable::pow(9.0, 0.5) == 3.0);
    CHECK(portable::pow(4.0, 2.5) == 32.0);
    CHECK(portable::pow(4.0, -0.5) == 0.5);
    CHECK(portable::pow(7.0, 0.0) == 1.0);
    CHECK(portable::pow(0.0, 0.3) == 0.0);
    CHECK(std::isinf(portable::pow(0.0, -0.3)));
    CHECK(std::isnan(portable::pow(-2.0, 0.3)));
    CHECK(portable::pow(-1.0001, 2000.0) > 1.2); // even: 1.0001²⁰⁰⁰ is about e^0.2 = 1.221
    CHECK(portable::pow(-1.0001, 2001.0) < -1.2);
    CHECK(std::isinf(portable::pow(10.0, 400.0)));
    CHECK(portable::pow(10.0, -400.0) == 0.0);
    Numbers numbers;
    double worst = 0.0;
    for (int i = 0; i < kDraws; ++i) {
        const double base = std::abs(numbers.of_any_size(10.0));
        const double exponent = numbers.within(10.0);
        worst = std::max(worst,
                         std::abs(portable::pow(base, exponent) / std::pow(base, exponent) - 1.0));
    }
    CHECK(worst <= 1e-13); // as the header says
}

TEST_CASE("the long side of a right triangle is the root of the squares", "[portable]") {
    CHECK(portable::hypot(3.0, -4.0) == 5.0);
    Numbers numbers;
    double worst = 0.0;
    for (int i = 0; i < kDraws; ++i) {
        const double x = numbers.of_any_size(10.0);
        const double y = numbers.of_any_size(10.0);
        worst = std::max(worst, places_apart(portable::hypot(x, y), std::hypot(x, y)));
    }
    CHECK(worst <= 2.0);
}
