#include "scene/curve_plot.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

/// The frame in which the curves lie, inside the words.
struct PlotFrame {
    Point low;  ///< top left
    Point high; ///< bottom right

    explicit PlotFrame(const CurvePlot& plot)
        : low(plot.corner_px + Point(0.0, 26.0 * plot.text_scale)),
          high(plot.corner_px + plot.size_px -
               Point(64.0 * plot.text_scale, 24.0 * plot.text_scale)) {}
    double x(double share) const { return low.x() + share * (high.x() - low.x()); }
};

Label words(const Point& at, const std::string& text, Role role, Align align) {
    Label label;
    label.at = at;
    label.text = text;
    label.size = TextSize::caption;
    label.role = role;
    label.align = align;
    return label;
}

/// Least and largest value of all curves, zero included.
std::pair<double, double> value_range(const std::vector<Curve>& curves) {
    double least = 0.0;
    double most = 0.0;
    for (const Curve& curve : curves)
        for (const double value : curve.values) {
            least = std::min(least, value);
            most = std::max(most, value);
        }
    if (most - least < 1e-9)
        most = least + 1.0;
    return {least, most};
}

double value_at(const std::vector<double>& values, double share) {
    const double place = share * static_cast<double>(values.size() - 1);
    const auto before = static_cast<std::size_t>(std::floor(place));
    const std::size_t after = std::min(before + 1, values.size() - 1);
    const double part = place - static_cast<double>(before);
    return values[before] + part * (values[after] - values[before]);
}

/// Names at the right ends of the curves, pushed apart where curves meet.
template <typename ToSheet>
void add_names(const CurvePlot& plot, const PlotFrame& frame, const ToSheet& y,
               std::vector<Shape>& shapes) {
    std::vector<std::pair<double, const Curve*>> names;
    for (const Curve& curve : plot.curves)
        if (!curve.values.empty())
            names.emplace_back(y(curve.values.back()), &curve);
    std::stable_sort(names.begin(), names.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    double last_px = -1e9;
    for (const auto& [end_px, curve] : names) {
        last_px = std::max(end_px + 4.0 * plot.text_scale, last_px + 15.0 * plot.text_scale);
        shapes.emplace_back(words({frame.high.x() + 8.0 * plot.text_scale, last_px}, curve->name,
                                  Role::ink, Align::left));
    }
}

} // namespace

void add_curve_plot(const CurvePlot& plot, std::vector<Shape>& shapes) {
    const PlotFrame frame(plot);
    const auto [least, most] = value_range(plot.curves);
    const double span_px = frame.high.y() - frame.low.y();
    const auto y = [&, least = least, most = most](double value) {
        return frame.high.y() - (value - least) / (most - least) * span_px;
    };
    const double text = plot.text_scale;
    shapes.emplace_back(
        words(plot.corner_px + Point(0.0, 12.0 * text), plot.title, Role::quiet_ink, Align::left));
    shapes.emplace_back(Line{frame.low, {frame.low.x(), frame.high.y()}, {Role::quiet_ink, 1.5}});
    shapes.emplace_back(
        Line{{frame.low.x(), y(0.0)}, {frame.high.x(), y(0.0)}, {Role::quiet_ink, 1.5}});
    const double cursor = std::clamp(plot.cursor, 0.0, 1.0);
    shapes.emplace_back(Line{{frame.x(cursor), frame.low.y()},
                             {frame.x(cursor), frame.high.y()},
                             {Role::quiet_ink, 2.0, Dash::dotted, 1.0}});
    for (const Curve& curve : plot.curves) {
        if (curve.values.size() < 2)
            continue;
        Polyline line{{}, {Role::ink, curve.strong ? 3.0 : 2.0, curve.dash, 1.0}};
        const auto count = static_cast<double>(curve.values.size() - 1);
        for (std::size_t i = 0; i < curve.values.size(); ++i)
            line.corners.emplace_back(frame.x(static_cast<double>(i) / count), y(curve.values[i]));
        shapes.emplace_back(std::move(line));
        Disc dot;
        dot.centre = {frame.x(cursor), y(value_at(curve.values, cursor))};
        dot.radius_px = 5.0;
        dot.fill = Role::ink;
        shapes.emplace_back(dot);
    }
    add_names(plot, frame, y, shapes);
    const double below_px = frame.high.y() + 18.0 * text;
    shapes.emplace_back(
        words({frame.low.x(), below_px}, plot.left_end, Role::quiet_ink, Align::left));
    shapes.emplace_back(
        words({frame.high.x(), below_px}, plot.right_end, Role::quiet_ink, Align::right));
}

double range_at(const CurvePlot& plot, const Point& sheet_px) {
    const PlotFrame frame(plot);
    return (sheet_px.x() - frame.low.x()) / (frame.high.x() - frame.low.x());
}

Point place_at(const CurvePlot& plot, double share) {
    const PlotFrame frame(plot);
    return {frame.x(share), 0.5 * (frame.low.y() + frame.high.y())};
}

bool is_over(const CurvePlot& plot, const Point& sheet_px) {
    const PlotFrame frame(plot);
    const Point reach{10.0, 10.0};
    return (sheet_px.array() >= (frame.low - reach).array()).all() &&
           (sheet_px.array() <= (frame.high + reach).array()).all();
}

} // namespace steelyard::scene
