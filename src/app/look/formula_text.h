#pragma once
// Lines of formula text with their indices small and low, broken at blanks.

#include "app/look/style.h"

namespace steelyard::app {

/// Draws text broken to a width, first baseline at `at.y`; what words::formula_parts calls an index
/// stands small and low. Text without symbols is set as draw_paragraph sets it.
/// @return the y of the next baseline
float draw_formula(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
                   float width_px, std::string_view text);

} // namespace steelyard::app
