#pragma once
// Two levers side by side as a figure for paper and files.

#include "scene/drawing.h"
#include "setup/lever/lever_setup.h"

#include <tl/expected.hpp>

namespace steelyard::publish {

/// Both levers at one scale of lengths and of forces, A above B; at the right effort, arms, torque
/// and advantage as paired bars, each quantity with a scale of its own; in sentences, what B
/// changes and how much more or less each quantity is. In A's units.
/// @param sheet_px  from about 860 × 640 up; text keeps its size
/// @return the drawing, or which input cannot be computed with
tl::expected<scene::Drawing, mechanics::MechanicsError>
comparison_figure(const setup::LeverSetup& a, const setup::LeverSetup& b,
                  const scene::Point& sheet_px);

} // namespace steelyard::publish
