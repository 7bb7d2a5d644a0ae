#pragma once
// The shelf of setups: small drawings to choose from.

#include "app/look/style.h"
#include "app/paint/placed_drawing.h"
#include "app/platform/window.h"
#include "app/shelf/shelf_cards.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// The open shelf between frames.
struct ShelfState {
    bool open = false;
    bool is_old = true; ///< what is to stand on it has yet to be looked up
    std::string search;
    std::size_t chosen = 0; ///< of those that the search leaves
    bool scroll_to_chosen = false;
    std::vector<ShelfCard> cards; ///< made when the shelf opens or its width changes
    double cards_width_px = 0.0;  ///< for which they were made; 0 = to be made
};

/// Opens the shelf anew.
void open_shelf(ShelfState& state);

/// Indices of the cards in whose words all words of a search occur, in either case of letters.
std::vector<std::size_t> cards_with(const std::vector<ShelfCard>& cards, const std::string& search);

/// What the shelf shows besides its cards.
struct ShelfContent {
    std::string heading;
    const char* new_word = nullptr;  ///< makes something new; null = nothing can be made
    bool can_put_back = false;       ///< one was removed just now
    std::vector<std::string> faults; ///< said below the cards
};

/// What came of a frame of the shelf.
struct ShelfFrame {
    std::optional<std::size_t> opened;  ///< index of the card to open
    std::optional<std::size_t> removed; ///< index of the card to remove
    bool put_back = false;
    bool makes_new = false;
    std::vector<PlacedDrawing> pictures;
};

/// The size of the cards' pictures in a window [px].
scene::Point card_picture_px(const Style& style, const scene::Point& window_px);

/// Draws the shelf over the whole window and reads its keys: arrows choose, Enter opens, Delete
/// removes, Escape leaves.
ShelfFrame draw_shelf(const Style& style, const ShelfContent& content,
                      const scene::Point& window_px, const std::vector<KeyPress>& keys,
                      ShelfState& state);

} // namespace steelyard::app
