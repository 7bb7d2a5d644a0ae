#pragma once
// The room that a figure takes of a sheet, for words that keep off it.

#include "scene/body/body_stage.h"
#include "scene/marks/label_board.h"

namespace steelyard::scene {

/// Marks the limbs of a figure as something that text should not cover.
void keep_figure_clear(const mechanics::Body& body, const mechanics::Placement& placement,
                       const BodyStage& stage, LabelBoard& board);

} // namespace steelyard::scene
