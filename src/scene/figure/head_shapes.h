#pragma once
// Head, face and hair.

#include "scene/figure/flesh.h"

#include <vector>

namespace steelyard::scene {

/// Appends the head without a face's features: hair, profile and ears make front and back readable.
void add_head(const Flesh& flesh, const mechanics::Placement& placement, const BodyStage& stage,
              std::vector<Shape>& shapes);

} // namespace steelyard::scene
