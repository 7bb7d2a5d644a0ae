#pragma once
// A number and under it the name of what has it, placed as one: forces on every stage, torques of
// joints.

#include "scene/marks/label_board.h"

#include <string>
#include <vector>

namespace steelyard::scene {

struct NamePlate {
    std::string number; ///< "118 N", strong
    std::string name;   ///< under it
    Role role = Role::load;
    TextSize name_size = TextSize::body;
    Role name_role = Role::load;
};

/// Where words may stand: a baseline's end and which end it is.
struct WordPlace {
    Point at = Point::Zero();
    Align align = Align::left;
};

/// Places beside an arrow, from the tip back, then past the tip and below its tail.
std::vector<WordPlace> places_beside(const Point& from, const Point& to, double text_scale);

/// Places around a point at some distances, the nearest first, the sides before above and below.
std::vector<WordPlace> places_around(const Point& centre, const std::vector<double>& distances_px);

/// Labels of the same words at all places, for a board to choose from.
std::vector<Label> labels_at(const std::vector<WordPlace>& places, const std::string& words,
                             TextSize size, Role role, bool strong = false);

/// Appends both lines at the place where they cover least.
/// @return the room they take
Rect add_name_plate(const NamePlate& plate, const std::vector<WordPlace>& places, double text_scale,
                    LabelBoard& board, std::vector<Shape>& shapes);

/// Appends both lines where they cover nothing, near to the places or else near to the anchor.
/// @return the room they take; empty: there is none, and nothing was appended
std::optional<Rect> add_free_name_plate(const NamePlate& plate,
                                        const std::vector<WordPlace>& places, const Point& anchor,
                                        double text_scale, LabelBoard& board,
                                        std::vector<Shape>& shapes);

} // namespace steelyard::scene
