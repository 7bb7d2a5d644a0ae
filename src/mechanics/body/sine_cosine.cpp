#include "mechanics/body/sine_cosine.h"

#include <Eigen/Core>

#include <cstdint>

namespace steelyard::mechanics {

namespace {

constexpr double kTwoByPi = 6.36619772367581382433e-01;
/// A quarter turn as a sum: the first part has 33 bits, so that small multiples of it are exact.
constexpr double kQuarterHigh = 1.57079632673412561417e+00;
constexpr double kQuarterLow = 6.07710050650619224932e-11;
/// Adding and taking away 1.5 × 2⁵² rounds to a whole number; meanwhile that number stands in the
/// last bits.
constexpr double kRounder = 6755399441055744.0;

/// Sine of an angle of at most an eighth of a turn; z is its square.
double sine_near_zero(double y, double z) {
    const double tail =
        8.33333333332248946124e-03 +
        z * (-1.98412698298579493134e-04 +
             z * (2.75573137070700676789e-06 +
                  z * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10)));
    return y + y * z * (-1.66666666666666324348e-01 + z * tail);
}

double cosine_near_zero(double z) {
    const double tail =
        4.16666666666666019037e-02 +
        z * (-1.38888888888741095749e-03 +
             z * (2.48015872894767294178e-05 +
                  z * (-2.75573143513906633035e-07 +
                       z * (2.08757232129817482790e-09 + z * -1.13596475577881948265e-11))));
    return 1.0 - (0.5 * z - z * z * tail);
}

} // namespace

void sines_and_cosines(const PerHinge& angle_rad, PerHinge& sine, PerHinge& cosine) {
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        const double rounded = angle_rad[i] * kTwoByPi + kRounder;
        const double quarters = rounded - kRounder;
        const double y = (angle_rad[i] - quarters * kQuarterHigh) - quarters * kQuarterLow;
        const double z = y * y;
        const auto near_sine = Eigen::numext::bit_cast<std::uint64_t>(sine_near_zero(y, z));
        const auto near_cosine = Eigen::numext::bit_cast<std::uint64_t>(cosine_near_zero(z));

        // In odd quarters the two change places; then each has its sign by the quarter.
        const auto quarter = Eigen::numext::bit_cast<std::uint64_t>(rounded);
        const std::uint64_t odd = std::uint64_t{0} - (quarter & 1u);
        const std::uint64_t sine_sign = (quarter & 2u) << 62u;
        const std::uint64_t cosine_sign = ((quarter + 1u) & 2u) << 62u;
        sine[i] =
            Eigen::numext::bit_cast<double>(((near_sine & ~odd) | (near_cosine & odd)) ^ sine_sign);
        cosine[i] = Eigen::numext::bit_cast<double>(((near_cosine & ~odd) | (near_sine & odd)) ^
                                                    cosine_sign);
    }
}

} // namespace steelyard::mechanics
