#pragma once
// The box under a reading: how it was computed, with the setup's own numbers.

#include "app/widgets/column_pen.h"
#include "setup/lever_steps.h"

#include <vector>

namespace steelyard::app {

void draw_steps_box(const Style& style, const std::vector<setup::ComputedStep>& steps,
                    ColumnPen& pen);

} // namespace steelyard::app
