#include "problems/marking/slips.h"

#include "mechanics/portable.h"
#include "problems/bank/family_names.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace steelyard::problems {

namespace {

using setup::Dimension;
using Factors = std::vector<double>;

/// How many of the smaller unit are one of the larger.
double ratio(Dimension dimension, std::string_view larger, std::string_view smaller) {
    const setup::Unit& unit = *setup::unit_by_symbol(dimension, smaller);
    return setup::value_in_unit(setup::value_in_SI(1.0, *setup::unit_by_symbol(dimension, larger)),
                                unit);
}

/// A factor that is forgotten, or used where it has no place.
Factors either_way(double factor) {
    return {factor, 1.0 / factor};
}

template <typename Fits> bool any_given(const Question& question, const Fits& fits) {
    return std::any_of(question.given.begin(), question.given.end(), fits);
}

bool gives_unit(const Question& question, std::string_view one, std::string_view other) {
    return any_given(question,
                     [&](const Given& given) { return given.unit == one || given.unit == other; });
}

/// The gravity that the question states [m/s²]; none with pounds, of which one weighs one.
std::optional<double> gravity_in(const Question& question) {
    for (const Given& given : question.given)
        if (given.name == "gravity" && given.unit != "lbf/lb")
            return given.value_si;
    return std::nullopt;
}

Factors length_not_converted(const Question& question) {
    const bool is_metric = gives_unit(question, "m", "cm") || gives_unit(question, "mm", "mm");
    return is_metric ? either_way(ratio(Dimension::length, "m", "cm")) : Factors{};
}

Factors thousand(const Question& /*question*/) {
    return either_way(ratio(Dimension::force, "kN", "N"));
}

Factors inches_for_feet(const Question& question) {
    return gives_unit(question, "in", "ft") ? either_way(ratio(Dimension::length, "ft", "in"))
                                            : Factors{};
}

Factors gravity_twice(const Question& question) {
    const auto g = gravity_in(question);
    return g ? Factors{*g} : Factors{};
}

Factors mass_for_weight(const Question& question) {
    const auto g = gravity_in(question);
    return g ? Factors{1.0 / *g} : Factors{};
}

Factors gravity_as_ten(const Question& question) {
    const auto g = gravity_in(question);
    return g ? Factors{10.0 / *g} : Factors{};
}

Factors decimal(const Question& /*question*/) {
    return either_way(10.0);
}

Factors sign(const Question& /*question*/) {
    return {-1.0};
}

Factors pounds_for_kilograms(const Question& question) {
    return gives_unit(question, "lb", "kg") ? either_way(ratio(Dimension::mass, "kg", "lb"))
                                            : Factors{};
}

/// Degrees read as radians, in the sine and in the cosine of each angle that is given.
Factors radians(const Question& question) {
    namespace portable = mechanics::portable;
    constexpr double kLeastPart = 0.05; // nearer to zero the quotient says nothing
    Factors factors;
    for (const Given& given : question.given) {
        if (given.unit != "°")
            continue;
        for (const auto part : {portable::sin, portable::cos})
            if (const double right = part(given.value_si); std::abs(right) > kLeastPart)
                factors.push_back(std::abs(part(given.value) / right)); // a size is typed
    }
    return factors;
}

struct Row {
    std::string_view rule;
    Factors (*factors)(const Question&);
};

/// Where two give the same number, the first is named.
constexpr Row kRows[] = {
    {"length-not-converted", length_not_converted},
    {"thousand-slip", thousand},
    {"inches-for-feet", inches_for_feet},
    {"gravity-twice", gravity_twice},
    {"mass-for-weight", mass_for_weight},
    {"gravity-as-ten", gravity_as_ten},
    {"decimal-slip", decimal},
    {"sign", sign},
    {"pounds-for-kilograms", pounds_for_kilograms},
    {"angle-in-radians", radians},
};

} // namespace

std::vector<Slip> slips_of(const Question& question) {
    std::vector<Slip> slips;
    for (const Row& row : kRows)
        for (const double factor : row.factors(question))
            slips.push_back({row.rule, factor});
    return slips;
}

} // namespace steelyard::problems
