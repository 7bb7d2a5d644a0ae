#pragma once
// What loads the body, drawn: weights, bars, cables with their pulley, bands with their anchor.

#include "scene/body/body_stage.h"
#include "scene/marks/label_board.h"

#include <vector>

namespace steelyard::scene {

/// Appends the things themselves; their forces are drawn apart.
/// @param room  of the stage; a cable to a pulley outside ends at its edge in an arrow head
void add_resistance_marks(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                          const BodyStage& stage, const Rect& room, std::vector<Shape>& shapes);

} // namespace steelyard::scene
