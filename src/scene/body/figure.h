#pragma once
// The human figure as rounded limbs with bones inside.

#include "scene/body/body_stage.h"

#include <vector>

namespace steelyard::scene {

/// Appends the figure, far parts first. The far side is paler.
/// Thicknesses of the limbs are fractions of height for the drawing only; nothing is computed from
/// them. From memory of usual proportions, no source.
void add_figure(const mechanics::Body& body, const mechanics::Placement& placement,
                const BodyStage& stage, std::vector<Shape>& shapes);

/// The flesh of one segment as the figure has it; heads, heels, shoulders and hips have more.
Taper flesh_of(const mechanics::Body& body, const mechanics::Placement& placement,
               const BodyStage& stage, mechanics::Segment segment);

} // namespace steelyard::scene
