#include "setup/units/format_quantity.h"

#include "mechanics/constants.h"
#include "setup/units/unit_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdlib>
#include <fast_float/fast_float.h>

namespace steelyard::setup {
namespace {

constexpr std::string_view kThinSpace = "\u2009";
constexpr std::string_view kNoBreakSpace = "\u00A0";
constexpr std::string_view kMinus = "−";
constexpr double kNoise = 1e-9;
/// Digits of a double that survive a computation: the 16th and 17th are rounding noise, and must
/// not decide which way a half is rounded.
constexpr int kSoundDigits = 15;
/// Digits that tell any two doubles apart.
constexpr int kAllDigits = 17;

/// Decimal digits and the power of ten of the first one: 2300 is {"23", 3}.
struct Decimal {
    std::string digits;
    int exponent = 0;
};

Decimal to_decimal(double magnitude) {
    const std::string text = fmt::format("{:.{}e}", magnitude, kSoundDigits - 1);
    const std::size_t e = text.find('e');
    Decimal decimal;
    for (const char c : text.substr(0, e))
        if (c != '.')
            decimal.digits += c;
    decimal.exponent = std::atoi(text.c_str() + e + 1);
    return decimal;
}

/// Half away from zero, on the decimal digits.
Decimal rounded(Decimal decimal, int figures) {
    const auto kept = static_cast<std::size_t>(figures);
    if (decimal.digits.size() <= kept)
        return decimal;
    const bool up = decimal.digits[kept] >= '5';
    decimal.digits.resize(kept);
    if (!up)
        return decimal;
    std::size_t i = kept;
    while (i > 0 && decimal.digits[i - 1] == '9')
        decimal.digits[--i] = '0';
    if (i > 0) {
        ++decimal.digits[i - 1];
    } else { // 9.99 became 10.0
        decimal.digits.insert(decimal.digits.begin(), '1');
        decimal.digits.pop_back();
        ++decimal.exponent;
    }
    return decimal;
}

std::string grouped(const std::string& whole) {
    std::string result;
    for (std::size_t i = 0; i < whole.size(); ++i) {
        if (i > 0 && (whole.size() - i) % 3 == 0)
            result += kThinSpace;
        result += whole[i];
    }
    return result;
}

std::string raised(int exponent) {
    static constexpr std::string_view kDigits[] = {"⁰", "¹", "²", "³", "⁴",
                                                   "⁵", "⁶", "⁷", "⁸", "⁹"};
    std::string result = exponent < 0 ? "⁻" : "";
    for (const char digit : std::to_string(std::abs(exponent)))
        result += kDigits[digit - '0'];
    return result;
}

/// Digits with a point after the first `before` of them.
std::string pointed(const std::string& digits, std::size_t before) {
    return before >= digits.size() ? digits
                                   : digits.substr(0, before) + "." + digits.substr(before);
}

std::string written_out(const Decimal& decimal) {
    const int places = static_cast<int>(decimal.digits.size());
    if (decimal.exponent >= kSoundDigits || decimal.exponent < -6)
        return pointed(decimal.digits, 1) + " × 10" + raised(decimal.exponent);
    if (decimal.exponent < 0)
        return "0." + std::string(static_cast<std::size_t>(-decimal.exponent - 1), '0') +
               decimal.digits;
    std::string whole = decimal.digits.substr(0, static_cast<std::size_t>(decimal.exponent) + 1);
    if (decimal.exponent + 1 > places)
        whole += std::string(static_cast<std::size_t>(decimal.exponent + 1 - places), '0');
    const std::string decimals =
        decimal.exponent + 1 < places
            ? decimal.digits.substr(static_cast<std::size_t>(decimal.exponent) + 1)
            : std::string();
    return decimals.empty() ? grouped(whole) : grouped(whole) + "." + decimals;
}

bool is_exact(const Decimal& full, const Decimal& shown) {
    const std::size_t last = full.digits.find_last_not_of('0');
    return full.exponent == shown.exponent && last < shown.digits.size();
}

std::string_view reading_unit(double value_SI, Dimension dimension, UnitSystem system) {
    const bool us = system == UnitSystem::us;
    const double size = std::abs(value_SI);
    const bool is_zero = size < kNoise;
    switch (dimension) {
    case Dimension::length:
        if (us)
            return size < 3 * 0.3048 ? "in" : "ft";
        return is_zero || size >= 0.1 ? "m" : "cm";
    case Dimension::force:
        return us ? "lbf" : size >= 1e5 ? "kN" : "N";
    case Dimension::mass:
        if (us)
            return is_zero || size >= mechanics::kPound_kg ? "lb" : "oz";
        return is_zero || size >= 1.0 ? "kg" : "g";
    default:
        return formula_unit(dimension, system);
    }
}

} // namespace

std::string QuantityText::joined() const {
    if (unit.empty())
        return number;
    const bool follows_closely = unit == "°" || unit == "%";
    return follows_closely ? number + unit : number + std::string(kNoBreakSpace) + unit;
}

std::string format_number(double value, const NumberStyle& style) {
    assert(std::isfinite(value));
    assert(style.significant_figures >= 1 && style.significant_figures <= kSoundDigits);
    if (!(std::abs(value) >= kNoise))
        return "0";
    const Decimal full = to_decimal(std::abs(value));
    Decimal shown = rounded(full, std::clamp(style.significant_figures, 1, kSoundDigits));
    if (!style.keep_zeros && is_exact(full, shown))
        shown.digits.resize(std::max<std::size_t>(shown.digits.find_last_not_of('0') + 1, 1));
    return (value < 0 ? std::string(kMinus) : std::string()) + written_out(shown);
}

std::string_view formula_unit(Dimension dimension, UnitSystem system) {
    const bool us = system == UnitSystem::us;
    switch (dimension) {
    case Dimension::number:
        return "";
    case Dimension::length:
        return us ? "ft" : "m";
    case Dimension::angle:
        return "°";
    case Dimension::mass:
        return us ? "lb" : "kg";
    case Dimension::force:
        return us ? "lbf" : "N";
    case Dimension::torque:
        return us ? "ft·lbf" : "N·m";
    case Dimension::time:
        return "s";
    case Dimension::speed:
        return us ? "ft/s" : "m/s";
    case Dimension::angular_speed:
        return "°/s";
    case Dimension::acceleration:
        return us ? "ft/s²" : "m/s²";
    case Dimension::stiffness:
        return us ? "lbf/ft" : "N/m";
    case Dimension::energy:
        return us ? "ft·lbf" : "J";
    case Dimension::power:
        return "W";
    }
    return "";
}

QuantityText format_in_unit(double value_SI, Dimension dimension, std::string_view unit_symbol,
                            const NumberStyle& style) {
    if (unit_symbol.empty())
        return {format_number(value_SI, style), ""};
    return {format_number(from_SI(value_SI, dimension, unit_symbol), style),
            std::string(unit_symbol)};
}

QuantityText format_quantity_parts(double value_SI, Dimension dimension, UnitSystem system,
                                   const NumberStyle& style) {
    // Noise is judged in SI: a nanometre is none the more for being 39 nanoinches.
    const double sound_SI = std::abs(value_SI) < kNoise ? 0.0 : value_SI;
    return format_in_unit(sound_SI, dimension, reading_unit(sound_SI, dimension, system), style);
}

std::string format_quantity(double value_SI, Dimension dimension, UnitSystem system,
                            const NumberStyle& style) {
    return format_quantity_parts(value_SI, dimension, system, style).joined();
}

std::string exact_number(double value) {
    assert(std::isfinite(value));
    return value == 0.0 ? "0" : fmt::format("{}", value);
}

std::string exact_quantity(double value_SI, Dimension dimension, std::string_view unit_symbol) {
    assert(std::isfinite(value_SI));
    if (dimension == Dimension::number)
        return exact_number(value_SI);
    const Unit* unit = unit_by_symbol(dimension, unit_symbol);
    const std::string_view si_symbol = dimension == Dimension::angle
                                           ? std::string_view("rad")
                                           : formula_unit(dimension, UnitSystem::si);
    assert(unit != nullptr);
    const double in_unit = unit ? value_in_unit(value_SI, *unit) : value_SI;
    // The division above may miss by a rounding: 15 digits give back what a person would write,
    // 16 and 17 and the neighbouring doubles give back the rest.
    for (int digits = kSoundDigits; unit && digits <= kAllDigits; ++digits)
        for (const double towards : {in_unit, -HUGE_VAL, HUGE_VAL}) {
            const std::string text =
                fmt::format("{:.{}g}", std::nextafter(in_unit, towards), digits);
            double read = 0.0;
            fast_float::from_chars(text.data(), text.data() + text.size(), read);
            if (value_in_SI(read, *unit) == value_SI)
                return exact_number(read) + " " + std::string(unit_symbol);
        }
    return exact_number(value_SI) + " " + std::string(si_symbol);
}

} // namespace steelyard::setup
