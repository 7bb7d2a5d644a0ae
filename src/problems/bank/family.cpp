#include "problems/bank/family.h"

#include "mechanics/portable.h"
#include "setup/units/format_quantity.h"

#include <cmath>

namespace steelyard::problems {

std::string Quantity::unit_symbol() const {
    return unit ? std::string(unit->symbol) : std::string();
}

double Quantity::in_SI(double shown) const {
    return unit ? setup::value_in_SI(shown, *unit) : shown;
}

double Quantity::in_unit(double value_si) const {
    return unit ? setup::value_in_unit(value_si, *unit) : value_si;
}

bool Quantity::shows_exactly(double value_si) const {
    const double scaled = in_unit(value_si) * mechanics::portable::pow(10.0, kMaxDecimals);
    // Conversions leave a few roundings behind; a nanounit is no difference to anyone.
    return std::abs(scaled - std::round(scaled)) <= 1.0e-6;
}

double Let::value(const double* quantities) const {
    const double value = is.evaluate(quantities);
    if (!arm || !std::isfinite(value))
        return value;
    const double arm_m = std::abs(mechanics::arm_at(arm->sources, value).arm_m);
    return std::round(arm_m / arm->round_to_m) * arm->round_to_m;
}

const setup::Unit* Family::usual_unit(setup::Dimension dimension) const {
    std::string_view symbol = setup::formula_unit(dimension, units());
    if (in_inches && dimension == setup::Dimension::length)
        symbol = "in";
    if (in_inches && dimension == setup::Dimension::torque)
        symbol = "in·lbf";
    if (in_inches && dimension == setup::Dimension::stiffness)
        symbol = "lbf/in";
    return setup::unit_by_symbol(dimension, symbol);
}

std::optional<QuantityIndex> Family::find_quantity(std::string_view name) const {
    for (std::size_t i = 0; i < quantities.size(); ++i)
        if (quantities[i].name == name)
            return static_cast<QuantityIndex>(i);
    return std::nullopt;
}

bool Family::provides(const Provided& provided) const {
    return (lever && problems::provides(*lever, provided)) ||
           (body && problems::provides(*body, provided));
}

} // namespace steelyard::problems
