#pragma once
// The shelf of setups: small drawings to choose from.

#include "app/look/style.h"
#include "app/paint/placed_drawing.h"
#include "app/platform/window.h"
#include "app/shelf/shelf_cards.h"

#include <functional>
#include <optional>
#include <vector>

namespace steelyard::app {

/// The open shelf between frames.
struct ShelfState {
    bool open = false;
    std::size_t chosen = 0;
    bool scroll_to_chosen = false;
    std::vector<ShelfCard> cards; ///< made when the shelf opens or its width changes
    double cards_width_px = 0.0;  ///< for which they were made; 0 = to be made
};

/// Opens the shelf anew.
void open_shelf(ShelfState& state);

/// What the shelf shows.
struct ShelfContent {
    std::string heading;
    /// Makes the cards for a size of their pictures [px].
    std::function<std::vector<ShelfCard>(const scene::Point&)> make_cards;
    const std::vector<std::string>* faults = nullptr; ///< said below the cards
};

/// What came of a frame of the shelf.
struct ShelfFrame {
    std::optional<std::size_t> opened; ///< index of the card to open
    std::vector<PlacedDrawing> pictures;
};

/// Draws the shelf over the whole window and reads its keys: arrows choose, Enter opens, Escape
/// leaves.
ShelfFrame draw_shelf(const Style& style, const ShelfContent& content,
                      const scene::Point& window_px, const std::vector<KeyPress>& keys,
                      ShelfState& state);

} // namespace steelyard::app
