#pragma once
// The box under a reading: how it was computed, with the setup's own numbers.

#include "app/widgets/column_pen.h"
#include "words/lever/lever_steps.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// A step as it is read: what is computed, and under it how.
struct StepLines {
    std::string title;
    std::string formula; ///< "τ = F × d = 118 N × 0.4 m = 47.1 N·m", with what there is of it
};
std::vector<StepLines> words_of(const std::vector<words::ComputedStep>& steps);

void draw_steps_box(const Style& style, const std::vector<StepLines>& steps, ColumnPen& pen);

} // namespace steelyard::app
