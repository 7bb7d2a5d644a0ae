#pragma once
// A look around for whoever is new: a few sentences, each beside what it speaks of. It can be left
// at any time.

#include "app/look/style.h"
#include "app/place/place.h"
#include "app/platform/window.h"

#include <optional>

namespace steelyard::app {

/// The look around between frames.
struct Tour {
    bool open = false;
    std::size_t step = 0;
};

/// Where the present step of the tour wants to be.
PlaceName tour_place(const Tour& tour);

/// Draws the present step over the place, beside what it speaks of, and reads its keys: Enter and
/// right go on, left goes back, Escape leaves.
/// @param shown  what the place has drawn in this frame: the step's words are looked up in it
void run_tour(const Style& style, const scene::Point& window_px, const Narration& shown,
              const std::vector<KeyPress>& keys, Tour& tour);

} // namespace steelyard::app
