#pragma once
// What pulls at the body from the room, drawn: cables with their pulley and column, bands with
// their anchor. What is held or worn is drawn with the figure.

#include "scene/body/body_stage.h"
#include "scene/marks/label_board.h"

#include <vector>

namespace steelyard::scene {

/// Appends the lines themselves; their forces are drawn apart.
/// @param room  of the stage; a cable to a pulley outside ends at its edge in an arrow head
void add_resistance_marks(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                          const BodyStage& stage, const Rect& room, std::vector<Shape>& shapes);

} // namespace steelyard::scene
