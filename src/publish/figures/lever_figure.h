#pragma once
// A lever setup as a drawing for paper and files.

#include "mechanics/lever/lever_solve.h"
#include "scene/drawing.h"
#include "setup/lever/lever_setup.h"

namespace steelyard::publish {

/// The setup drawn whole, as on the stage: name, forces, arms, ruler and balance strip.
/// @param sheet_px  from about 400 × 260 up; text keeps its size whatever the sheet
scene::Drawing lever_figure(const setup::LeverSetup& setup, const mechanics::LeverResult& result,
                            const scene::Point& sheet_px);

/// The setup drawn on the upper part of the sheet, its result in sentences below.
scene::Drawing captioned_lever_figure(const setup::LeverSetup& setup,
                                      const mechanics::LeverResult& result,
                                      const scene::Point& sheet_px);

} // namespace steelyard::publish
