#pragma once
// An exercise through its range of motion as a figure for paper and files.

#include "mechanics/muscle/muscle.h"
#include "scene/drawing.h"
#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

#include <vector>

namespace steelyard::publish {

/// The poses of the repetition in a row; below them the torque at every joint that could be the
/// axis, and the pulls of the muscles of the first; in sentences, where each is hardest. Moved so
/// slowly that only weights count.
/// @param muscles   all that are known, such as shipped_muscles
/// @param sheet_px  from about 860 × 640 up; text keeps its size
/// @return the drawing, or which input cannot be computed with: an exercise that holds still has
///         no range (key "path")
tl::expected<scene::Drawing, mechanics::MechanicsError>
sweep_figure(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
             const scene::Point& sheet_px);

} // namespace steelyard::publish
