#pragma once
// What loads the body, drawn: weights, bars, cables with their pulley, bands with their anchor.

#include "scene/body_stage.h"

#include <vector>

namespace steelyard::scene {

/// Appends the things themselves; their forces are drawn apart.
void add_resistance_marks(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                          const BodyStage& stage, std::vector<Shape>& shapes);

} // namespace steelyard::scene
