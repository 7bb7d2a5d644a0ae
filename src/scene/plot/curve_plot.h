#pragma once
// Curves over a range, with axes, ticks, a peak mark and a cursor: torque through the range of
// motion.

#include "scene/drawing.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace steelyard::scene {

struct Curve {
    std::string name;
    std::vector<double> values; ///< one for each place of the range, evenly spaced; NaN = a gap
    Dash dash = Dash::solid;
    bool strong = false;
    Role role = Role::ink;
};

/// A mark on an axis.
struct PlotTick {
    double at = 0.0; ///< on the range 0 to 1, or a value of the curves
    std::string text;
};

/// Between which two values most people lie, at places of the range evenly spaced.
struct PlotBand {
    std::vector<double> low;
    std::vector<double> high;
};

struct CurvePlot {
    std::string title;
    std::string unit;  ///< of the values: "N·m"
    std::string range; ///< what runs along: "elbow flexion"
    std::vector<PlotTick> range_ticks;
    std::vector<PlotTick> value_ticks; ///< their ends are the scale's ends
    std::vector<Curve> curves;
    std::optional<PlotBand> band;
    double cursor = 0.0;             ///< where on the range, 0 to 1
    std::optional<double> hover;     ///< where the pointer is, 0 to 1
    std::string peak;                ///< words at the largest value of the strong curve
    Point corner_px = Point::Zero(); ///< top left of the plot with its words
    Point size_px{240.0, 190.0};
    double text_scale = 1.0;
};

/// Least and largest of all curves and the band, zero included; never of no width.
std::pair<double, double> value_range(const CurvePlot& plot);

/// Place of the value of largest size, 0 to 1; empty for a curve of gaps.
std::optional<double> peak_place(const Curve& curve);

/// Value between the places, straight; NaN beside a gap.
double value_at(const std::vector<double>& values, double place);

/// Appends the plot.
void add_curve_plot(const CurvePlot& plot, std::vector<Shape>& shapes);

/// Where on the range a point of the sheet lies, 0 to 1; outside the plot's frame below 0 or
/// above 1.
double range_at(const CurvePlot& plot, const Point& sheet_px);

/// Where on the sheet a place of the range lies, half way up the frame.
Point place_at(const CurvePlot& plot, double share);

/// True over the frame in which the curves lie.
bool is_over(const CurvePlot& plot, const Point& sheet_px);

} // namespace steelyard::scene
