#pragma once
// Typing a quantity where it is shown: bare numbers mean the unit on the screen, other units are
// converted, and what cannot be read is answered with a sentence.

#include "app/look/style.h"
#include "setup/units/units.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::app {

/// A text being typed.
struct TypedField {
    std::string text;
    std::string fault;     ///< what is wrong with the text, and what to do
    bool opened = false;   ///< asked for, and yet to take the keyboard
    bool is_number = true; ///< a keyboard on the screen need only have digits
};

/// A field in which the present value stands selected.
TypedField open_typed(double value_SI, setup::Dimension dimension, setup::UnitSystem units);

/// Reads a typed quantity [SI].
/// @param shown_SI       the present value: a bare number is in the unit in which it is shown
/// @param mass_as_force  "2 kg" may stand for the weight of 2 kg
/// @return the value, or a sentence saying what is wrong and what to do
tl::expected<double, std::string> read_typed(const std::string& text, double shown_SI,
                                             setup::Dimension dimension, setup::UnitSystem units,
                                             bool mass_as_force);

enum class TypedEnd {
    none,    ///< still being typed
    entered, ///< Enter
    left,    ///< Escape, or a click elsewhere
};

/// Draws the field and its fault.
TypedEnd draw_typed_field(const Style& style, ImVec2 corner, float width_px, TypedField& field);

/// Keeps the field open with a sentence under it.
void refuse_typed(TypedField& field, std::string fault);

} // namespace steelyard::app
