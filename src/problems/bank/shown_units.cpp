#include "problems/bank/shown_units.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace steelyard::problems {

namespace {

using setup::Dimension;

/// By how much a quantity grows when lengths are doubled and masses tripled, times left alone.
double growth_of(Dimension dimension) {
    constexpr double kLength = 2.0;
    constexpr double kMass = 3.0;
    switch (dimension) {
    case Dimension::length:
    case Dimension::speed:
    case Dimension::acceleration:
        return kLength;
    case Dimension::mass:
    case Dimension::stiffness:
        return kMass;
    case Dimension::force:
        return kMass * kLength;
    case Dimension::torque:
    case Dimension::energy:
    case Dimension::power:
        return kMass * kLength * kLength;
    case Dimension::number:
    case Dimension::angle:
    case Dimension::time:
    case Dimension::angular_speed:
        break;
    }
    return 1.0;
}

bool has_letters(const std::string& text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
               static_cast<unsigned char>(c) >= 0x80;
    });
}

} // namespace

bool is_homogeneous(const Expression& formula, const Family& family, Dimension dimension) {
    for (const Expression::Piece& piece : formula.pieces())
        if (piece.is == Expression::Piece::Is::number && has_letters(piece.text))
            return true;
    std::vector<double> plain(family.quantities.size());
    std::vector<double> grown(family.quantities.size());
    for (std::size_t i = 0; i < plain.size(); ++i) {
        // Any sizes do; these keep sines, roots and differences away from zero.
        plain[i] = 0.3 + 0.07 * static_cast<double>(i % 7);
        grown[i] = plain[i] * growth_of(family.quantities[i].dimension);
    }
    const double expected = formula.evaluate(plain.data()) * growth_of(dimension);
    const double found = formula.evaluate(grown.data());
    if (!std::isfinite(expected) || !std::isfinite(found))
        return true;
    return std::abs(expected - found) <= 1.0e-6 * std::max(std::abs(expected), std::abs(found));
}

double value_in_shown_units(const Expression& formula, const Family& family,
                            const double* quantities) {
    std::vector<double> shown(family.quantities.size());
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const Quantity& quantity = family.quantities[i];
        const bool bare =
            quantity.dimension == Dimension::angle || quantity.dimension == Dimension::number;
        shown[i] = bare ? quantities[i] : quantity.in_unit(quantities[i]);
    }
    return family.quantities[family.ask.find].in_SI(formula.evaluate(shown.data()));
}

} // namespace steelyard::problems
