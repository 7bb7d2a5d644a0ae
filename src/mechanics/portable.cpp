#include "mechanics/portable.h"

#include "mechanics/constants.h"

#include <cmath>
#include <limits>

namespace steelyard::mechanics::portable {

namespace {

/// Up to here a quarter turn's parts are exact enough: a thousand turns.
constexpr double kNear_rad = 2000.0 * kPi;
/// What a double misses of a quarter turn.
constexpr double kQuarterTail = 6.12323399573676603587e-17;

/// Arctangent of a ratio from 0 to 1.
double atan_to_one(double ratio) {
    // Beside zero the series in ratio; else what is left of a known angle, atan ½ or atan 1.
    double x = ratio;
    double known = 0.0;
    double known_tail = 0.0;
    if (ratio >= 0.6875) {
        x = (ratio - 1.0) / (ratio + 1.0);
        known = 7.85398163397448278999e-01;
        known_tail = 3.06161699786838301793e-17;
    } else if (ratio >= 0.4375) {
        x = (2.0 * ratio - 1.0) / (2.0 + ratio);
        known = 4.63647609000806093515e-01;
        known_tail = 2.26987774529616870924e-17;
    }
    const double z = x * x;
    const double w = z * z;
    const double even =
        z * (3.33333333333329318027e-01 +
             w * (1.42857142725034663711e-01 +
                  w * (9.09088713343650656196e-02 +
                       w * (6.66107313738753120669e-02 +
                            w * (4.97687799461593236017e-02 + w * 1.62858201153657823623e-02)))));
    const double odd =
        w * (-1.99999999998764832476e-01 +
             w * (-1.11111104054623557880e-01 +
                  w * (-7.69187620504482999495e-02 +
                       w * (-5.83357013379057348645e-02 + w * -3.65315727442169155270e-02))));
    return known - ((x * (even + odd) - known_tail) - x);
}

// ln 2 as a sum: the first part has 33 bits, so that small multiples of it are exact.
constexpr double kLn2High = 6.93147180369123816490e-01;
constexpr double kLn2Low = 1.90821492927058770002e-10;

/// Natural logarithm of a positive finite number.
double log(double x) {
    int exponent = 0;
    double part = std::frexp(x, &exponent); // ½ to 1
    if (part < 7.07106781186547524401e-01) {
        part *= 2.0;
        --exponent;
    }
    const double f = part - 1.0;
    const double s = f / (2.0 + f);
    const double z = s * s;
    const double series =
        z * (6.666666666666735130e-01 +
             z * (3.999999999940941908e-01 +
                  z * (2.857142874366239149e-01 +
                       z * (2.222219843214978396e-01 +
                            z * (1.818357216161805012e-01 +
                                 z * (1.531383769920937332e-01 + z * 1.479819860511658591e-01))))));
    const double half_square = 0.5 * f * f;
    return exponent * kLn2High -
           ((half_square - (s * (half_square + series) + exponent * kLn2Low)) - f);
}

double exp(double x) {
    // Beyond, the result is no double: zero or infinite.
    if (x > 709.0)
        return std::numeric_limits<double>::infinity();
    if (x < -745.0)
        return 0.0;
    const double twos = std::round(x / (kLn2High + kLn2Low));
    const double high = x - twos * kLn2High;
    const double low = twos * kLn2Low;
    const double r = high - low;
    const double z = r * r;
    const double c =
        r - z * (1.66666666666666019037e-01 +
                 z * (-2.77777777770155933842e-03 +
                      z * (6.61375632143793436117e-05 +
                           z * (-1.65339022054652515390e-06 + z * 4.13813679705723846039e-08))));
    const double result = 1.0 - ((low - (r * c) / (2.0 - c)) - high);
    return std::ldexp(result, static_cast<int>(twos));
}

double whole_power(double base, double exponent) {
    double result = 1.0;
    double square = base;
    for (auto left = static_cast<std::uint64_t>(std::abs(exponent)); left > 0; left >>= 1u) {
        if ((left & 1u) != 0)
            result *= square;
        square *= square;
    }
    return exponent < 0.0 ? 1.0 / result : result;
}

} // namespace

SineCosine sine_cosine(double angle_rad) {
    // The remainder is exact on every platform.
    return sine_cosine_near(
        std::abs(angle_rad) <= kNear_rad ? angle_rad : std::remainder(angle_rad, 2.0 * kPi));
}

double sin(double angle_rad) {
    return sine_cosine(angle_rad).sine;
}

double cos(double angle_rad) {
    return sine_cosine(angle_rad).cosine;
}

double tan(double angle_rad) {
    const SineCosine both = sine_cosine(angle_rad);
    return both.sine / both.cosine;
}

double atan2(double y, double x) {
    const double up = std::abs(y);
    const double along = std::abs(x);
    const bool steep = up > along;
    const double ratio = up == along ? (up == 0.0 ? 0.0 : 1.0) : steep ? along / up : up / along;
    const double off_rad = atan_to_one(ratio); // from the nearer axis
    const bool backwards = std::signbit(x);
    double angle_rad = off_rad;
    if (steep)
        angle_rad = 0.5 * kPi + (backwards ? off_rad + kQuarterTail : kQuarterTail - off_rad);
    else if (backwards)
        angle_rad = kPi - (off_rad - 2.0 * kQuarterTail);
    return std::copysign(angle_rad, y);
}

double atan(double tangent) {
    return atan2(tangent, 1.0);
}

double asin(double sine) {
    return atan2(sine, std::sqrt((1.0 - sine) * (1.0 + sine)));
}

double acos(double cosine) {
    return atan2(std::sqrt((1.0 - cosine) * (1.0 + cosine)), cosine);
}

double hypot(double x, double y) {
    return std::sqrt(x * x + y * y);
}

double pow(double base, double exponent) {
    constexpr double kMostMultiplied = 1024.0;
    const double whole = std::floor(exponent);
    if (base < 0.0 && exponent != whole)
        return std::numeric_limits<double>::quiet_NaN();
    if (std::abs(exponent) <= kMostMultiplied) {
        if (exponent == whole)
            return whole_power(base, exponent);
        if (exponent - whole == 0.5) {
            const double size = whole_power(base, std::floor(std::abs(exponent))) * std::sqrt(base);
            return exponent > 0.0 ? size : 1.0 / size;
        }
    }
    if (base == 0.0)
        return exponent < 0.0 ? std::numeric_limits<double>::infinity() : 0.0;
    const double size = exp(exponent * log(std::abs(base)));
    const bool odd = exponent == whole && std::fmod(whole, 2.0) != 0.0;
    return base < 0.0 && odd ? -size : size;
}

} // namespace steelyard::mechanics::portable
