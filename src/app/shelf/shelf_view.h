#pragma once
// The shelf of setups: small drawings to choose from.

#include "app/frame/window.h"
#include "app/look/style.h"
#include "app/shelf/shelf.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/units.h"

#include <optional>
#include <vector>

namespace steelyard::app {

/// The open shelf between frames.
struct ShelfState {
    bool open = false;
    std::size_t chosen = 0;
    bool scroll_to_chosen = false;
    std::vector<scene::Drawing> pictures; ///< one a setup; made when the shelf opens
    double pictures_width_px = 0.0;       ///< for which they were made
};

/// A small drawing and where it goes on the sheet, for the shape painter.
struct PlacedDrawing {
    const scene::Drawing* drawing = nullptr;
    scene::Point at_px = scene::Point::Zero();
};

/// What came of a frame of the shelf.
struct ShelfOutcome {
    std::optional<std::size_t> opened; ///< index of the setup to open
    std::vector<PlacedDrawing> pictures;
};

/// Draws the shelf over the whole window and reads its keys: arrows choose, Enter opens, Escape
/// leaves.
ShelfOutcome draw_shelf(const Style& style, const Shelf& shelf, setup::UnitSystem units,
                        const scene::Point& window_px, const std::vector<KeyPress>& keys,
                        ShelfState& state);

} // namespace steelyard::app
