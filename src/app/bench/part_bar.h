#pragma once
// The numbers of the chosen part, under the heading: press one to type it.

#include "app/bench/number_field.h"
#include "app/bench/stage_input.h"

namespace steelyard::app {

/// What was asked for in the bar, and where it ends below [px].
struct PartBar {
    std::optional<BenchIntent> intent;
    double bottom_px = 0.0;
};

/// Where the bar stands [px].
struct PartBarRoom {
    scene::Point corner; ///< its left end above
    double width = 0.0;
    double bottom = 0.0; ///< how far down it has reached before
};

/// Draws the bar in as many lines as its words need.
PartBar draw_part_bar(const Style& style, const BenchModel& model, const PartBarRoom& room_px,
                      const StageState& stage, NumberField& field);

} // namespace steelyard::app
