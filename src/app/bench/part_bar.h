#pragma once
// The numbers of the chosen part, under the heading: press one to type it.

#include "app/bench/number_field.h"
#include "app/bench/stage_input.h"

namespace steelyard::app {

/// Draws the bar with its left end at `corner`.
std::optional<BenchIntent> draw_part_bar(const Style& style, const BenchModel& model,
                                         const scene::Point& corner_px, double width_px,
                                         const StageState& stage, NumberField& field);

} // namespace steelyard::app
