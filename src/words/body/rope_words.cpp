#include "words/body/rope_words.h"

#include "setup/units/format_quantity.h"

#include <fmt/format.h>

namespace steelyard::words {

std::string stack_words(const mechanics::Resistance& resistance, setup::UnitSystem units) {
    const auto* column = std::get_if<mechanics::CableColumn>(&resistance.kind);
    if (!column)
        return {};
    return fmt::format(
        "{}:1 from a {} stack", column->rope_ratio,
        setup::format_quantity(column->stack_kg, setup::Dimension::mass, units, {3, false}));
}

std::string rope_words(const mechanics::Resistance& resistance, double gravity_m_s2,
                       setup::UnitSystem units) {
    const auto* column = std::get_if<mechanics::CableColumn>(&resistance.kind);
    if (!column)
        return {};
    const auto force = [&](double force_N) {
        return setup::format_quantity(force_N, setup::Dimension::force, units);
    };
    return fmt::format("stack {} ({}), rope {}:1: tension {}",
                       setup::format_quantity(column->stack_kg, setup::Dimension::mass, units),
                       force(column->stack_kg * gravity_m_s2), column->rope_ratio,
                       force(mechanics::rope_tension(*column, gravity_m_s2)));
}

} // namespace steelyard::words
