#pragma once
// Curves over a range, with a cursor: torque through the range of motion.

#include "scene/drawing.h"

#include <string>
#include <vector>

namespace steelyard::scene {

struct Curve {
    std::string name;
    std::vector<double> values; ///< one for each place of the range, evenly spaced
    Dash dash = Dash::solid;
    bool strong = false;
};

struct CurvePlot {
    std::string title;
    std::string left_end; ///< what the start of the range is called: "20°"
    std::string right_end;
    std::vector<Curve> curves;
    double cursor = 0.0;             ///< where on the range, 0 to 1
    Point corner_px = Point::Zero(); ///< top left of the plot with its words
    Point size_px{240.0, 190.0};
    double text_scale = 1.0;
};

/// Appends the plot. The curves share one scale that begins at zero.
void add_curve_plot(const CurvePlot& plot, std::vector<Shape>& shapes);

/// Where on the range a point of the sheet lies, 0 to 1; outside the plot's frame below 0 or
/// above 1.
double range_at(const CurvePlot& plot, const Point& sheet_px);

/// Where on the sheet a place of the range lies, half way up the frame.
Point place_at(const CurvePlot& plot, double share);

/// True over the frame in which the curves lie.
bool is_over(const CurvePlot& plot, const Point& sheet_px);

} // namespace steelyard::scene
