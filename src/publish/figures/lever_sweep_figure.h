#pragma once
// What one number of a lever does to its effort, as a figure for paper and files.

#include "mechanics/whatif/lever_whatif.h"
#include "scene/drawing.h"
#include "setup/lever/lever_setup.h"

#include <tl/expected.hpp>

namespace steelyard::publish {

/// The lever as it is; below it effort and advantage over the number that is changed, with the
/// present setting marked; in sentences, the least and the largest effort and why the curves end
/// where they do.
/// @param change    one of possible_changes
/// @param sheet_px  from about 860 × 640 up; text keeps its size
/// @return the drawing, or which input cannot be computed with (see sweep_lever)
tl::expected<scene::Drawing, mechanics::MechanicsError>
sweep_figure(const setup::LeverSetup& setup, const mechanics::LeverChange& change,
             const scene::Point& sheet_px);

} // namespace steelyard::publish
