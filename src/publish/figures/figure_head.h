#pragma once
// What stands above a figure: its name and a sentence, or the badge and the name of one side of a
// comparison.

#include "scene/drawing.h"
#include "scene/plot/paired_bars.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// White space at the edges of a figure [px].
inline constexpr double kFigureEdge_px = 24.0;

/// Appends a name and below it a sentence, in as many lines as it needs, at the sheet's top left.
/// @return where what comes below may begin [px]
double add_figure_head(std::string_view name, std::string_view sentence, double sheet_width_px,
                       std::vector<scene::Shape>& shapes);

/// Appends a side's badge and name at the top left of its part of the sheet, cut where the part
/// ends.
void add_side_head(scene::Side side, const std::string& name, const scene::Point& corner_px,
                   double width_px, std::vector<scene::Shape>& shapes);

} // namespace steelyard::publish
