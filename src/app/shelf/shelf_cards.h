#pragma once
// What stands on the shelf's cards: a small drawing and a few words for each setup.

#include "app/shelf/shelf.h"
#include "scene/drawing.h"

#include <string>
#include <vector>

namespace steelyard::app {

struct ShelfCard {
    std::string name;
    std::string first_line;
    std::string second_line;
    scene::Drawing picture;
};

/// Cards of the levers, with their classes.
std::vector<ShelfCard> lever_cards(const Shelf& shelf, const scene::Point& picture_px);

/// Cards of the exercises, with the joint they are meant for.
std::vector<ShelfCard> body_cards(const Shelf& shelf, const scene::Point& picture_px);

} // namespace steelyard::app
