#pragma once
// Two exercises side by side as a figure for paper and files.

#include "scene/drawing.h"
#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

namespace steelyard::publish {

/// Both bodies at one scale of lengths and of forces, each where the first joint works hardest;
/// below them the largest torque of every joint as paired bars of one scale; in sentences, what B
/// changes and how much more or less it asks. Seen from where A is best looked at.
/// @param sheet_px  from about 860 × 640 up; text keeps its size
/// @return the drawing, or which input cannot be computed with
tl::expected<scene::Drawing, mechanics::MechanicsError>
comparison_figure(const setup::BodySetup& a, const setup::BodySetup& b,
                  const scene::Point& sheet_px);

} // namespace steelyard::publish
