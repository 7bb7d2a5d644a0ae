#pragma once
// The row at the top: the places to be, and what can be done anywhere.

#include "app/look/style.h"

namespace steelyard::app {

/// The places of the window.
enum class Place { bench, body };

/// What the row has to know.
struct PlacesRow {
    Place place = Place::bench;
    bool can_undo = false;
    bool can_redo = false;
    bool us_units = false;
    bool dark = false;
};

/// What was pressed in it.
enum class RowWish { none, go_to_bench, go_to_body, open_shelf, undo, redo, units, look, help };

RowWish draw_places_row(const Style& style, float width_px, const PlacesRow& row);

} // namespace steelyard::app
