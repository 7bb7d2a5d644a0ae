#include "setup/units/unit_table.h"

#include "mechanics/constants.h"

#include <cassert>
#include <string>

namespace steelyard::setup {
namespace {

// Exact factors. Source: NIST SP 811 (2008), Appendix B.8 and its footnotes: inch, foot and yard,
// the avoirdupois pound (0.453 592 37 kg) and g_n (9.806 65 m/s²) are exact by definition, and so
// is their product, the pound-force (4.448 221 615 260 5 N).
constexpr double kPoundForce_N = 44482216152605.0; // over 1e13
constexpr double kPoundForceDenominator = 1e13;
// Of a foot-pound: 4.448 221 615 260 5 N × 0.3048 m, rounded to what a double holds.
constexpr double kFootPound_Nm = 1.3558179483314004;

std::vector<Unit> make_table() {
    using D = Dimension;
    return {
        {D::number, "%", 1, 100, false, false, "percent|per*cent"},

        {D::length, "m", 1, 1, false, false, "meter|metre|meters|metres|mtr"},
        {D::length, "cm", 1, 100, false, false, "centimeter|centimetre|centimeters|centimetres"},
        {D::length, "mm", 1, 1000, false, false, "millimeter|millimetre|millimeters|millimetres"},
        {D::length, "dm", 1, 10, false, false, "decimeter|decimetre|decimeters|decimetres"},
        {D::length, "km", 1000, 1, false, false, "kilometer|kilometre|kilometers|kilometres"},
        {D::length, "in", 254, 10000, false, false, "\"|inch|inches|ins|in."},
        {D::length, "ft", 3048, 10000, false, false, "'|foot|feet|ft."},
        {D::length, "yd", 9144, 10000, false, false, "yard|yards|yds"},

        {D::angle, "°", 1, 180, true, false, "deg|degree|degrees|degs"},
        {D::angle, "rad", 1, 1, false, false, "radian|radians|rads"},
        {D::angle, "turn", 2, 1, true, false, "turns|rev|revolution|revolutions"},

        {D::mass, "kg", 1, 1, false, false,
         "kilogram|kilograms|kilogramme|kilogrammes|kilo|kilos|kgs"},
        {D::mass, "g", 1, 1000, false, false, "gram|grams|gramme|grammes|gm"},
        {D::mass, "t", 1000, 1, false, false, "tonne|tonnes"},
        {D::mass, "lb", 45359237, 100000000, false, false, "lbs|lbm|pound|pounds|lb.|lbs."},
        {D::mass, "oz", 45359237, 1600000000, false, false, "ounce|ounces|oz."},
        {D::mass, "st", 635029318, 100000000, false, false, "stone|stones"},

        {D::force, "N", 1, 1, false, false, "newton|newtons"},
        {D::force, "kN", 1000, 1, false, false, "kilonewton|kilonewtons"},
        {D::force, "daN", 10, 1, false, false, "decanewton|decanewtons"},
        {D::force, "mN", 1, 1000, false, false, "millinewton|millinewtons"},
        {D::force, "kgf", 980665, 100000, false, false,
         "kp|kg*f|kilopond|kiloponds|kilogram*force|kilograms*force"},
        {D::force, "gf", 980665, 100000000, false, false, "gram*force|grams*force|pond"},
        {D::force, "lbf", kPoundForce_N, kPoundForceDenominator, false, false,
         "lbsf|lb*f|lbs*f|pound*force|pounds*force|pounds*of*force"},
        {D::force, "ozf", kPoundForce_N, 16 * kPoundForceDenominator, false, false,
         "oz*f|ounce*force|ounces*force"},

        {D::torque, "N·m", 1, 1, false, false,
         "N*m|m*N|newton*meter|newton*metre|newton*meters|newton*metres|newtons*meters"},
        {D::torque, "N·cm", 1, 100, false, false,
         "N*cm|newton*centimeter|newton*centimetre|newton*centimeters|newton*centimetres"},
        {D::torque, "N·mm", 1, 1000, false, false, "N*mm"},
        {D::torque, "kN·m", 1000, 1, false, false, "kN*m|kilonewton*meter|kilonewton*metre"},
        {D::torque, "kgf·m", 980665, 100000, false, false, "kgf*m|kp*m|m*kgf"},
        {D::torque, "kgf·cm", 980665, 10000000, false, false, "kgf*cm|kp*cm"},
        {D::torque, "kg·m", 980665, 100000, false, true, "kg*m|m*kg"},
        {D::torque, "kg·cm", 980665, 10000000, false, true, "kg*cm"},
        // "ft-lb" for ft·lbf and "in-lb" for in·lbf: common practice, no source.
        {D::torque, "ft·lbf", kFootPound_Nm, 1, false, false,
         "ft*lbf|lbf*ft|ft*lb|lb*ft|ft*lbs|lbs*ft|foot*pound|foot*pounds|pound*foot|pound*feet|"
         "pounds*feet|feet*pounds|foot*pound*force|foot*pounds*force"},
        {D::torque, "in·lbf", kFootPound_Nm, 12, false, false,
         "in*lbf|lbf*in|in*lb|lb*in|in*lbs|lbs*in|inch*pound|inch*pounds|pound*inch|pound*inches|"
         "inch*pound*force|inch*pounds*force"},
        {D::torque, "in·ozf", kFootPound_Nm, 192, false, false,
         "in*ozf|ozf*in|in*oz|oz*in|inch*ounce|inch*ounces|ounce*inch|ounce*inches"},

        {D::time, "s", 1, 1, false, false, "sec|secs|second|seconds"},
        {D::time, "ms", 1, 1000, false, false, "millisecond|milliseconds"},
        {D::time, "min", 60, 1, false, false, "minute|minutes|mins"},
        {D::time, "h", 3600, 1, false, false, "hr|hrs|hour|hours"},

        {D::speed, "m/s", 1, 1, false, false, "m/sec|meter/second|metre/second|m*per*s"},
        {D::speed, "cm/s", 1, 100, false, false, "cm/sec"},
        {D::speed, "km/h", 1000, 3600, false, false, "kph|km*per*h"},
        {D::speed, "ft/s", 3048, 10000, false, false, "ft/sec|fps"},
        {D::speed, "in/s", 254, 10000, false, false, "in/sec"},
        {D::speed, "mph", 44704, 100000, false, false, "mi/h"},

        {D::angular_speed, "rad/s", 1, 1, false, false, "rad/sec|radians/second"},
        {D::angular_speed, "°/s", 1, 180, true, false, "deg/s|deg/sec|degrees/second"},
        {D::angular_speed, "rpm", 1, 30, true, false, "r/min|rev/min|turn/min|turns/min"},

        {D::acceleration, "m/s²", 1, 1, false, false, "m/s2|m/s/s|m/sec2"},
        {D::acceleration, "ft/s²", 3048, 10000, false, false, "ft/s2|ft/s/s|ft/sec2"},
        // What a pound of mass weighs: standard gravity as people with pounds meet it.
        {D::acceleration, "lbf/lb", 980665, 100000, false, false, ""},

        {D::stiffness, "N/m", 1, 1, false, false, "newton/meter|newton/metre|newtons/meter"},
        {D::stiffness, "N/cm", 100, 1, false, false, ""},
        {D::stiffness, "N/mm", 1000, 1, false, false, ""},
        {D::stiffness, "kN/m", 1000, 1, false, false, ""},
        {D::stiffness, "lbf/in", kPoundForce_N, 254 * 1e9, false, false, "lb/in|lbs/in"},
        {D::stiffness, "lbf/ft", kPoundForce_N, 3048 * 1e9, false, false, "lb/ft|lbs/ft"},

        {D::energy, "J", 1, 1, false, false, "joule|joules|N*m|newton*meter|newton*metre|Ws"},
        {D::energy, "kJ", 1000, 1, false, false, "kilojoule|kilojoules"},
        {D::energy, "ft·lbf", kFootPound_Nm, 1, false, false,
         "ft*lbf|ft*lb|foot*pound|foot*pounds"},

        {D::power, "W", 1, 1, false, false, "watt|watts|J/s|N*m/s"},
        {D::power, "kW", 1000, 1, false, false, "kilowatt|kilowatts"},
    };
}

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& letter : result)
        if (letter >= 'A' && letter <= 'Z')
            letter = static_cast<char>(letter - 'A' + 'a');
    return result;
}

std::string without_product_signs(std::string_view text) {
    std::string result;
    for (const char letter : text)
        if (letter != '*')
            result += letter;
    return result;
}

/// "N·m" as a typed unit is normalised: product signs become '*', powers lose their mark.
std::string normalised_symbol(std::string_view symbol) {
    static constexpr std::string_view kDot = "·", kSquare = "²", kDegree = "°";
    std::string result;
    for (std::size_t i = 0; i < symbol.size();) {
        const std::string_view rest = symbol.substr(i);
        const auto replace = [&](std::string_view from, std::string_view to) {
            if (rest.substr(0, from.size()) != from)
                return false;
            result += to;
            i += from.size();
            return true;
        };
        if (!replace(kDot, "*") && !replace(kSquare, "2") && !replace(kDegree, "deg"))
            result += symbol[i++];
    }
    return result;
}

bool spelled_alike(std::string_view typed, const std::string& known) {
    return typed == known || typed == without_product_signs(known);
}

template <typename Alike> bool any_spelling(const Unit& unit, const Alike& alike) {
    if (alike(normalised_symbol(unit.symbol)))
        return true;
    std::string_view rest = unit.spellings;
    while (!rest.empty()) {
        const std::size_t bar = rest.find('|');
        if (alike(std::string(rest.substr(0, bar))))
            return true;
        rest = bar == std::string_view::npos ? std::string_view() : rest.substr(bar + 1);
    }
    return false;
}

} // namespace

const std::vector<Unit>& all_units() {
    static const std::vector<Unit> table = make_table();
    return table;
}

const Unit* unit_by_symbol(Dimension dimension, std::string_view symbol) {
    for (const Unit& unit : all_units())
        if (unit.dimension == dimension && unit.symbol == symbol)
            return &unit;
    return nullptr;
}

const Unit* unit_by_spelling(Dimension dimension, std::string_view spelling) {
    if (spelling.empty())
        return nullptr;
    for (const Unit& unit : all_units())
        if (unit.dimension == dimension && any_spelling(unit, [&](const std::string& known) {
                return spelled_alike(spelling, known);
            }))
            return &unit;
    // "KG", "Lbs", "NM": capitals are forgiven when no unit is written exactly so. mN is not: a
    // millinewton typed "MN" would be off by a factor of 1e9 from what some may mean.
    const std::string typed = lower(spelling);
    for (const Unit& unit : all_units())
        if (unit.dimension == dimension && unit.symbol != "mN" &&
            any_spelling(
                unit, [&](const std::string& known) { return spelled_alike(typed, lower(known)); }))
            return &unit;
    return nullptr;
}

double value_in_SI(double value, const Unit& unit) {
    // Through half turns, so that 90° is exactly half of π.
    const double converted = value * unit.numerator / unit.denominator;
    return unit.half_turns ? converted * mechanics::kPi : converted;
}

double value_in_unit(double value_SI, const Unit& unit) {
    const double value = unit.half_turns ? value_SI / mechanics::kPi : value_SI;
    return value * unit.denominator / unit.numerator;
}

double to_SI(double value, Dimension dimension, std::string_view unit_symbol) {
    const Unit* unit = unit_by_symbol(dimension, unit_symbol);
    assert(unit != nullptr);
    return unit ? value_in_SI(value, *unit) : value;
}

double from_SI(double value_SI, Dimension dimension, std::string_view unit_symbol) {
    const Unit* unit = unit_by_symbol(dimension, unit_symbol);
    assert(unit != nullptr);
    return unit ? value_in_unit(value_SI, *unit) : value_SI;
}

std::vector<std::string_view> unit_symbols(Dimension dimension) {
    std::vector<std::string_view> symbols;
    for (const Unit& unit : all_units())
        if (unit.dimension == dimension)
            symbols.push_back(unit.symbol);
    return symbols;
}

std::string_view name_of(Dimension dimension) {
    switch (dimension) {
    case Dimension::number:
        return "pure number";
    case Dimension::length:
        return "length";
    case Dimension::angle:
        return "angle";
    case Dimension::mass:
        return "mass";
    case Dimension::force:
        return "force";
    case Dimension::torque:
        return "torque";
    case Dimension::time:
        return "time";
    case Dimension::speed:
        return "speed";
    case Dimension::angular_speed:
        return "angular speed";
    case Dimension::acceleration:
        return "acceleration";
    case Dimension::stiffness:
        return "stiffness";
    case Dimension::energy:
        return "energy";
    case Dimension::power:
        return "power";
    }
    return "quantity";
}

} // namespace steelyard::setup
