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
    std::string also; ///< further words by which it is found: loads, plane, muscles
    scene::Drawing picture;
    bool removable = false; ///< the person's own, in a file of theirs
};

/// Cards of the levers, with their classes.
std::vector<ShelfCard> cards_of(const LeverShelf& shelf, const scene::Point& picture_px);

/// Cards of the exercises, with the joint they are meant for.
std::vector<ShelfCard> cards_of(const ExerciseShelf& shelf, const scene::Point& picture_px);

} // namespace steelyard::app
