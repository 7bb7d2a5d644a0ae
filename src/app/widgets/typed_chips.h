#pragma once
// A row of numbers with their names: whichever is pressed can be typed.

#include "app/widgets/column_pen.h"
#include "app/widgets/typed_field.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// A number that can be typed.
struct TypedChip {
    std::string name;
    double value_SI = 0.0;
    setup::Dimension dimension = setup::Dimension::number;
};

/// Which one is being typed, between frames.
struct TypedChipsState {
    std::optional<std::size_t> open;
    TypedField typed;
};

/// What was entered into one of them.
struct EnteredChip {
    std::size_t index = 0;
    double value_SI = 0.0;
};

/// Draws them below the pen, in as many rows as it takes, and moves the pen below them. What
/// cannot be read keeps its field open with a sentence under it.
std::optional<EnteredChip> draw_typed_chips(const Style& style, const std::vector<TypedChip>& chips,
                                            setup::UnitSystem units, ColumnPen& pen,
                                            TypedChipsState& state);

} // namespace steelyard::app
