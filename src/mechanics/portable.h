#pragma once
// Elementary functions that give the same digits on every platform.
//
// A C library may round sines, arctangents and powers as it likes, and libraries differ in the last
// digit. A question that is made again from its code has to come out the same everywhere, so what
// leads to a question calls these (tests/layers/ looks for the others). They are made of additions,
// products, quotients and square roots, which IEEE 754 fixes to the last bit. Names and arguments
// are the C library's.
//
// Source of the kernels: FDLIBM 5.3 (Sun Microsystems 1993: k_sin.c, k_cos.c, s_atan.c, e_exp.c,
// e_log.c), coefficients from memory, held by the test against the C library.

#include <Eigen/Core>

#include <cstdint>

namespace steelyard::mechanics::portable {

struct SineCosine {
    double sine = 0.0;
    double cosine = 1.0;
};

namespace kernel {

/// Sine of an angle of at most an eighth of a turn; z is its square.
inline double sine_near_zero(double y, double z) {
    const double tail =
        8.33333333332248946124e-03 +
        z * (-1.98412698298579493134e-04 +
             z * (2.75573137070700676789e-06 +
                  z * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10)));
    return y + y * z * (-1.66666666666666324348e-01 + z * tail);
}

inline double cosine_near_zero(double z) {
    const double tail =
        4.16666666666666019037e-02 +
        z * (-1.38888888888741095749e-03 +
             z * (2.48015872894767294178e-05 +
                  z * (-2.75573143513906633035e-07 +
                       z * (2.08757232129817482790e-09 + z * -1.13596475577881948265e-11))));
    return 1.0 - (0.5 * z - z * z * tail);
}

} // namespace kernel

/// Sine and cosine to within one unit in the last place of 1, for an angle of at most a thousand
/// turns [rad]; beyond them neither is to be used. Without branches, so that a loop over many
/// angles works on several at once.
inline SineCosine sine_cosine_near(double angle_rad) {
    constexpr double kTwoByPi = 6.36619772367581382433e-01;
    // A quarter turn as a sum: the first part has 33 bits, so that small multiples of it are exact.
    constexpr double kQuarterHigh = 1.57079632673412561417e+00;
    constexpr double kQuarterLow = 6.07710050650619224932e-11;
    // Adding and taking away 1.5 × 2⁵² rounds to a whole number; meanwhile that number stands in
    // the last bits.
    constexpr double kRounder = 6755399441055744.0;
    using Eigen::numext::bit_cast;

    const double rounded = angle_rad * kTwoByPi + kRounder;
    const double quarters = rounded - kRounder;
    const double y = (angle_rad - quarters * kQuarterHigh) - quarters * kQuarterLow;
    const double z = y * y;
    const auto near_sine = bit_cast<std::uint64_t>(kernel::sine_near_zero(y, z));
    const auto near_cosine = bit_cast<std::uint64_t>(kernel::cosine_near_zero(z));

    // In odd quarters the two change places; then each has its sign by the quarter.
    const auto quarter = bit_cast<std::uint64_t>(rounded);
    const std::uint64_t odd = std::uint64_t{0} - (quarter & 1u);
    const std::uint64_t sine_sign = (quarter & 2u) << 62u;
    const std::uint64_t cosine_sign = ((quarter + 1u) & 2u) << 62u;
    return {bit_cast<double>(((near_sine & ~odd) | (near_cosine & odd)) ^ sine_sign),
            bit_cast<double>(((near_cosine & ~odd) | (near_sine & odd)) ^ cosine_sign)};
}

/// Sine and cosine of any angle [rad]; NaN where it is not finite. Beyond a thousand turns the
/// angle is taken modulo the double nearest to a turn, so that the last digits mean nothing.
SineCosine sine_cosine(double angle_rad);

double sin(double angle_rad);
double cos(double angle_rad);
/// To within three units in its last place.
double tan(double angle_rad);

/// Angle of the point (x, y) from the x axis [rad], -π to π, to within two units in its last place;
/// zeros have their signs as in the C library's.
double atan2(double y, double x);
double atan(double tangent);
/// NaN beyond ±1; to within three units in the last place of the result or of 1.
double asin(double sine);
double acos(double cosine);

/// Root of x² + y², for lengths and forces: not for numbers whose squares overflow.
double hypot(double x, double y);

/// Base to a power. Whole exponents multiply, so that powers of ten up to 10²² are exact, and
/// halves take a root. Others go through the logarithm: to within 10⁻¹³ of the result, for results
/// between 10⁻¹⁰⁰ and 10¹⁰⁰. NaN for a negative base with a broken exponent.
/// @param base, exponent  finite
double pow(double base, double exponent);

} // namespace steelyard::mechanics::portable
