#include "scene/plot/curve_plot.h"

#include "scene/marks/label_board.h"
#include "scene/marks/text_width.h"
#include "scene/plot/sweep_plot.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kTick_px = 5.0;
constexpr double kNameLine_px = 15.0;

Label words(const Point& at, const std::string& text, Role role, Align align) {
    return make_label(at, text, TextSize::caption, role, align);
}

double widest_px(const std::vector<Curve>& curves, double scale) {
    double widest = 0.0;
    for (const Curve& curve : curves)
        widest = std::max(widest, text_width_px(curve.name, TextSize::caption, false, scale));
    return widest;
}

/// The frame in which the curves lie, inside the words.
struct PlotFrame {
    Point low;  ///< top left
    Point high; ///< bottom right
    double least = 0.0;
    double most = 1.0;

    explicit PlotFrame(const CurvePlot& plot) {
        const double text = plot.text_scale;
        double ticks_px = 0.0;
        for (const PlotTick& tick : plot.value_ticks)
            ticks_px = std::max(ticks_px, text_width_px(tick.text, TextSize::caption, false, text));
        const double names_px = std::min(widest_px(plot.curves, text), 0.4 * plot.size_px.x());
        low = plot.corner_px + Point(ticks_px + 10.0 * text, 34.0 * text);
        high = plot.corner_px + plot.size_px - Point(names_px + 12.0 * text, 38.0 * text);
        std::tie(least, most) = value_range(plot);
    }
    double x(double share) const { return low.x() + share * (high.x() - low.x()); }
    double y(double value) const {
        return high.y() - (value - least) / (most - least) * (high.y() - low.y());
    }
};

void add_axes(const CurvePlot& plot, const PlotFrame& frame, std::vector<Shape>& shapes) {
    const double text = plot.text_scale;
    const Stroke thin{Role::quiet_ink, 1.0};
    for (const PlotTick& tick : plot.value_ticks) {
        const double y = frame.y(tick.at);
        if (tick.at != 0.0)
            shapes.emplace_back(
                Line{{frame.low.x(), y}, {frame.high.x(), y}, {Role::hairline, 1.0}});
        shapes.emplace_back(Line{{frame.low.x() - kTick_px, y}, {frame.low.x(), y}, thin});
        shapes.emplace_back(words({frame.low.x() - kTick_px - 4.0 * text, y + 4.0 * text},
                                  tick.text, Role::quiet_ink, Align::right));
    }
    shapes.emplace_back(Line{frame.low, {frame.low.x(), frame.high.y()}, {Role::quiet_ink, 1.5}});
    shapes.emplace_back(Line{
        {frame.low.x(), frame.y(0.0)}, {frame.high.x(), frame.y(0.0)}, {Role::quiet_ink, 1.5}});
    for (const PlotTick& tick : plot.range_ticks) {
        const double x = frame.x(tick.at);
        shapes.emplace_back(Line{{x, frame.high.y()}, {x, frame.high.y() + kTick_px}, thin});
        shapes.emplace_back(
            words({x, frame.high.y() + 18.0 * text}, tick.text, Role::quiet_ink, Align::centre));
    }
    shapes.emplace_back(words({frame.low.x(), plot.corner_px.y() + 26.0 * text}, plot.unit,
                              Role::quiet_ink, Align::right));
    shapes.emplace_back(
        words({0.5 * (frame.low.x() + frame.high.x()), frame.high.y() + 33.0 * text}, plot.range,
              Role::quiet_ink, Align::centre));
}

/// Hatched: its edges are seen through curves, and in print.
void add_band(const PlotBand& band, const PlotFrame& frame, std::vector<Shape>& shapes) {
    if (band.low.size() < 2 || band.high.size() != band.low.size())
        return;
    const double width_px = frame.high.x() - frame.low.x();
    for (double x_px = 0.0; x_px <= width_px; x_px += 4.0) {
        const double share = x_px / width_px;
        const double low = value_at(band.low, share);
        const double high = value_at(band.high, share);
        if (std::isfinite(low) && std::isfinite(high))
            shapes.emplace_back(Line{{frame.x(share), frame.y(low)},
                                     {frame.x(share), frame.y(high)},
                                     {Role::effort, 1.25, Dash::solid, 0.45}});
    }
}

/// The curve in pieces between its gaps.
void add_curve(const Curve& curve, const PlotFrame& frame, std::vector<Shape>& shapes) {
    const auto count = static_cast<double>(curve.values.size() - 1);
    const Stroke stroke{curve.role, curve.strong ? 3.0 : 2.0, curve.dash, 1.0};
    Polyline piece{{}, stroke};
    const auto end_piece = [&] {
        if (piece.corners.size() > 1)
            shapes.emplace_back(std::move(piece));
        piece = Polyline{{}, stroke};
    };
    for (std::size_t i = 0; i < curve.values.size(); ++i)
        if (std::isfinite(curve.values[i]))
            piece.corners.emplace_back(frame.x(static_cast<double>(i) / count),
                                       frame.y(curve.values[i]));
        else
            end_piece();
    end_piece();
}

void add_dot(const Curve& curve, double place, double radius_px, const PlotFrame& frame,
             std::vector<Shape>& shapes) {
    const double value = value_at(curve.values, place);
    if (!std::isfinite(value))
        return;
    Disc dot;
    dot.centre = {frame.x(place), frame.y(value)};
    dot.radius_px = radius_px;
    dot.fill = curve.role;
    shapes.emplace_back(dot);
}

/// Names at the right ends of the curves, pushed apart where curves meet.
void add_names(const CurvePlot& plot, const PlotFrame& frame, std::vector<Shape>& shapes) {
    std::vector<std::pair<double, const Curve*>> names;
    for (const Curve& curve : plot.curves) {
        const auto last = std::find_if(curve.values.rbegin(), curve.values.rend(),
                                       [](double value) { return std::isfinite(value); });
        if (last != curve.values.rend())
            names.emplace_back(frame.y(*last), &curve);
    }
    std::stable_sort(names.begin(), names.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<double> at_px;
    for (const auto& name : names)
        at_px.push_back(name.first);
    at_px = spread_apart(std::move(at_px), kNameLine_px * plot.text_scale, frame.low.y(),
                         frame.high.y());
    for (std::size_t i = 0; i < names.size(); ++i) {
        Label name = words({frame.high.x() + 8.0 * plot.text_scale, at_px[i] + 4.0},
                           names[i].second->name, names[i].second->role, Align::left);
        name.strong = names[i].second->strong;
        shapes.emplace_back(std::move(name));
    }
}

void add_peak(const CurvePlot& plot, const PlotFrame& frame, std::vector<Shape>& shapes) {
    if (plot.peak.empty())
        return;
    const auto strong = std::find_if(plot.curves.begin(), plot.curves.end(),
                                     [](const Curve& curve) { return curve.strong; });
    const auto place = strong != plot.curves.end() ? peak_place(*strong) : std::nullopt;
    if (!place)
        return;
    const Point at{frame.x(*place), frame.y(value_at(strong->values, *place))};
    const bool above = at.y() < frame.y(0.0);
    const double away = (above ? -1.0 : 1.0) * plot.text_scale;
    shapes.emplace_back(Triangle{at + Point(0.0, 4.0 * away), at + Point(-5.0, 12.0 * away),
                                 at + Point(5.0, 12.0 * away), strong->role, 1.0});
    const double half_px =
        0.5 * text_width_px(plot.peak, TextSize::caption, false, plot.text_scale);
    // Within the axes: beside them stand the curves' names.
    const double leftmost = frame.low.x() + half_px + 4.0;
    const double middle =
        std::clamp(at.x(), leftmost, std::max(leftmost, frame.high.x() - half_px));
    Label peak =
        words({middle, at.y() + (above ? 17.0 : 26.0) * away}, plot.peak, Role::ink, Align::centre);
    const Rect room = room_of(peak, plot.text_scale);
    Box ground; // another curve may be higher there
    ground.centre = 0.5 * (room.low + room.high);
    ground.size_px = room.high - room.low + Point(6.0, 2.0);
    ground.corner_px = 3.0;
    ground.fill = Role::sheet;
    ground.fill_opacity = 0.85;
    shapes.emplace_back(ground);
    shapes.emplace_back(std::move(peak));
}

} // namespace

std::pair<double, double> value_range(const CurvePlot& plot) {
    double least = 0.0;
    double most = 0.0;
    const auto take = [&](double value) {
        if (std::isfinite(value)) {
            least = std::min(least, value);
            most = std::max(most, value);
        }
    };
    for (const Curve& curve : plot.curves)
        std::for_each(curve.values.begin(), curve.values.end(), take);
    if (plot.band) {
        std::for_each(plot.band->low.begin(), plot.band->low.end(), take);
        std::for_each(plot.band->high.begin(), plot.band->high.end(), take);
    }
    for (const PlotTick& tick : plot.value_ticks)
        take(tick.at);
    if (most - least < 1e-9)
        most = least + 1.0;
    return {least, most};
}

std::optional<double> peak_place(const Curve& curve) {
    std::optional<std::size_t> peak;
    for (std::size_t i = 0; i < curve.values.size(); ++i)
        if (std::isfinite(curve.values[i]) &&
            (!peak || std::abs(curve.values[i]) > std::abs(curve.values[*peak])))
            peak = i;
    if (!peak || curve.values.size() < 2)
        return std::nullopt;
    return static_cast<double>(*peak) / static_cast<double>(curve.values.size() - 1);
}

double value_at(const std::vector<double>& values, double place) {
    const double at = std::clamp(place, 0.0, 1.0) * static_cast<double>(values.size() - 1);
    const auto before = static_cast<std::size_t>(at);
    const std::size_t after = std::min(before + 1, values.size() - 1);
    const double part = at - static_cast<double>(before);
    return part == 0.0 ? values[before] : values[before] + part * (values[after] - values[before]);
}

void add_curve_plot(const CurvePlot& plot, std::vector<Shape>& shapes) {
    const PlotFrame frame(plot);
    if (!plot.title.empty())
        shapes.emplace_back(words(plot.corner_px + Point(0.0, 8.0 * plot.text_scale), plot.title,
                                  Role::quiet_ink, Align::left));
    add_axes(plot, frame, shapes);
    if (plot.band)
        add_band(*plot.band, frame, shapes);
    const double cursor = std::clamp(plot.cursor, 0.0, 1.0);
    shapes.emplace_back(Line{{frame.x(cursor), frame.low.y()},
                             {frame.x(cursor), frame.high.y()},
                             {Role::quiet_ink, 2.0, Dash::dotted, 1.0}});
    if (plot.hover)
        shapes.emplace_back(Line{{frame.x(*plot.hover), frame.low.y()},
                                 {frame.x(*plot.hover), frame.high.y()},
                                 {Role::quiet_ink, 1.0, Dash::solid, 0.7}});
    for (const Curve& curve : plot.curves) {
        if (curve.values.size() < 2)
            continue;
        add_curve(curve, frame, shapes);
        add_dot(curve, cursor, 5.0, frame, shapes);
        if (plot.hover)
            add_dot(curve, *plot.hover, 3.5, frame, shapes);
    }
    add_peak(plot, frame, shapes);
    add_names(plot, frame, shapes);
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
