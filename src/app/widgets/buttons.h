#pragma once
// The few controls of the sheet that are not text fields.

#include "app/look/style.h"

#include <string_view>

namespace steelyard::app {

/// An area that can be pressed, by the mouse or by its letters; the drawing around it is the
/// caller's.
/// @return true in the frame in which it was pressed
bool press_area(const Style& style, const char* id, ImVec2 corner, ImVec2 size);

/// A word that can be pressed, set like running text; underlined while it is the one in force,
/// and in ink while the pointer is on it.
/// @param at  left end of its baseline
/// @return true in the frame in which it was pressed
bool word_button(const Style& style, const char* id, ImVec2 at, std::string_view word,
                 bool in_force, bool enabled = true);

/// The one action of a column: a filled button over a width.
bool main_button(const Style& style, const char* id, ImVec2 corner, float width_px,
                 std::string_view words);

/// A quieter one beside it.
bool side_button(const Style& style, const char* id, ImVec2 corner, float width_px,
                 std::string_view words, bool enabled = true);

/// A quiet row that can be pressed; the chosen one has a mark at its left besides its colour.
bool row_button(const Style& style, const char* id, ImVec2 corner, float width_px, float height_px,
                bool chosen);

/// Height of the main button [px].
float main_button_height(const Style& style);

} // namespace steelyard::app
