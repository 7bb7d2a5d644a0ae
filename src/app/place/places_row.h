#pragma once
// The row at the top: the places to be, and what can be done anywhere.

#include "app/place/place.h"

#include <variant>

namespace steelyard::app {

/// What the row has to know.
struct PlacesRow {
    PlaceName place{};
    const char* shelf_word = nullptr; ///< null = nothing to choose from here
    bool can_keep = false;            ///< what is here may be kept among the person's own
    bool can_undo = false;
    bool can_redo = false;
};

/// What can be asked for in any place.
enum class RowWish { open_shelf, keep, undo, redo, glossary, settings, help };

/// What was pressed in the row: nothing, a place, or something else.
using RowPress = std::variant<std::monostate, PlaceName, RowWish>;

/// Draws the row over a width. What does not fit in one line goes into a second one.
RowPress draw_places_row(const Style& style, float width_px, const PlacesRow& row);

} // namespace steelyard::app
