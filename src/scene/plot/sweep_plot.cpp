#include "scene/plot/sweep_plot.h"

#include "scene/marks/text_width.h"
#include "scene/stage_view.h"
#include "setup/units/format_quantity.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::scene {
namespace {

/// Strokes that can be told apart without colour, the strongest first.
Stroke stroke_of(std::size_t curve, Role role) {
    constexpr std::array<Stroke, 5> kStrokes{{{Role::ink, 3.2, Dash::solid, 1.0},
                                              {Role::ink, 2.0, Dash::dashed, 1.0},
                                              {Role::ink, 3.0, Dash::dotted, 1.0},
                                              {Role::ink, 1.2, Dash::solid, 1.0},
                                              {Role::ink, 1.2, Dash::dashed, 1.0}}};
    Stroke stroke = kStrokes[curve % kStrokes.size()];
    stroke.role = role;
    return stroke;
}

class PlotPainter {
public:
    PlotPainter(const SweepPlot& plot, std::vector<Shape>& shapes)
        : plot_(plot), shapes_(shapes), board_(plot.frame, plot.text_scale) {
        double most_SI = 0.0;
        for (const SweepCurve& curve : plot.curves) {
            most_SI = std::max(most_SI, curve.marked.value_SI);
            for (const double value_SI : curve.values_SI)
                most_SI = std::max(most_SI, value_SI);
        }
        unit_ = setup::formula_unit(plot.dimension, plot.units);
        const double most = std::max(in_unit(most_SI), 1.0e-6);
        constexpr int kMostTicks = 5;
        ticks_ = round_ticks(0.0, most, kMostTicks);
        top_ = most;
        if (ticks_.size() > 1 && ticks_.back() < most) {
            ticks_.push_back(ticks_.back() + ticks_[1]);
            top_ = ticks_.back();
        }
    }

    void paint() {
        add_title();
        add_value_ticks();
        add_range_ticks();
        for (std::size_t i = 0; i < plot_.curves.size(); ++i)
            add_curve(plot_.curves[i], stroke_of(i, plot_.role));
        for (std::size_t i = 0; i < plot_.curves.size(); ++i)
            add_mark(plot_.curves[i], i == 0);
        add_names();
    }

private:
    double text(double px) const { return px * plot_.text_scale; }
    double in_unit(double value_SI) const {
        return unit_.empty() ? value_SI : setup::from_SI(value_SI, plot_.dimension, unit_);
    }
    double x(double progress) const {
        return plot_.frame.low.x() + progress * (plot_.frame.high.x() - plot_.frame.low.x());
    }
    double y(double value) const {
        return plot_.frame.high.y() - value / top_ * (plot_.frame.high.y() - plot_.frame.low.y());
    }

    Label caption(const Point& at, std::string words, Role role, Align align) const {
        return make_label(at, std::move(words), TextSize::caption, role, align);
    }

    void add_title() {
        Label title = caption(plot_.frame.low - Point(text(52.0), text(16.0)),
                              unit_.empty() ? plot_.title : plot_.title + " (" + unit_ + ")",
                              Role::ink, Align::left);
        title.strong = true;
        shapes_.emplace_back(std::move(title));
    }

    void add_value_ticks() {
        for (const double tick : ticks_) {
            const bool is_zero = tick == 0.0;
            shapes_.emplace_back(
                Line{{plot_.frame.low.x(), y(tick)},
                     {plot_.frame.high.x(), y(tick)},
                     {is_zero ? Role::quiet_ink : Role::hairline, is_zero ? 1.5 : 1.0}});
            shapes_.emplace_back(caption({plot_.frame.low.x() - text(8.0), y(tick) + text(4.5)},
                                         setup::format_number(tick, {3, false}), Role::quiet_ink,
                                         Align::right));
        }
    }

    double x_of(double place) const {
        const RangeScale& range = plot_.range;
        return x((place - range.start) / (range.end - range.start));
    }
    std::string words_of(double place) const {
        return setup::format_number(place, {3, false}) + plot_.range.unit;
    }

    /// As many round places as have room for their words.
    std::vector<double> range_ticks() const {
        const double low = std::min(plot_.range.start, plot_.range.end);
        const double high = std::max(plot_.range.start, plot_.range.end);
        constexpr int kMostTicks = 9;
        for (int most = kMostTicks; most > 2; --most) {
            std::vector<double> ticks = round_ticks(low, high, most);
            double widest_px = 0.0;
            for (const double tick : ticks)
                widest_px = std::max(widest_px, text_width_px(words_of(tick), TextSize::caption,
                                                              false, plot_.text_scale));
            if (ticks.size() < 2 ||
                std::abs(x_of(ticks[1]) - x_of(ticks[0])) > widest_px + text(10.0))
                return ticks;
        }
        return round_ticks(low, high, 2);
    }

    void add_range_ticks() {
        const RangeScale& range = plot_.range;
        const double bottom = plot_.frame.high.y();
        for (const double tick : range_ticks()) {
            const double at = x_of(tick);
            shapes_.emplace_back(
                Line{{at, bottom}, {at, bottom + text(5.0)}, {Role::quiet_ink, 1.5}});
            if (plot_.range_words) {
                shapes_.emplace_back(caption({at, bottom + text(20.0)}, words_of(tick),
                                             Role::quiet_ink, Align::centre));
            }
        }
        if (plot_.range_words) {
            shapes_.emplace_back(
                caption({x(0.5), bottom + text(40.0)}, range.title, Role::ink, Align::centre));
        }
    }

    void add_curve(const SweepCurve& curve, const Stroke& stroke) {
        if (curve.values_SI.size() < 2)
            return;
        Polyline line{{}, stroke};
        const auto last = static_cast<double>(curve.values_SI.size() - 1);
        for (std::size_t i = 0; i < curve.values_SI.size(); ++i) {
            line.corners.emplace_back(x(static_cast<double>(i) / last),
                                      y(in_unit(curve.values_SI[i])));
            if (i > 0)
                board_.keep_clear(line.corners[i - 1], line.corners[i], 4.0);
        }
        shapes_.emplace_back(std::move(line));
    }

    /// A ring on the curve's marked place with its number; filled on the first curve.
    void add_mark(const SweepCurve& curve, bool first) {
        constexpr double kFlat = 0.004; // of the plot's height: nothing to be seen
        if (in_unit(curve.marked.value_SI) <= kFlat * top_)
            return;
        Disc ring;
        ring.centre = {x(curve.marked.progress), y(in_unit(curve.marked.value_SI))};
        const auto is_here = [&](const Point& other) { return (other - ring.centre).norm() < 2.0; };
        if (std::any_of(marks_px_.begin(), marks_px_.end(), is_here))
            return; // curves that lie on each other have one mark
        marks_px_.push_back(ring.centre);
        ring.radius_px = 4.5;
        ring.fill = first ? plot_.role : Role::sheet;
        ring.outline = Stroke{plot_.role, 2.0};
        shapes_.emplace_back(ring);
        const std::string words = marked_text(curve, plot_.dimension, plot_.units, plot_.range);
        std::vector<Label> ways;
        for (const double up_px : {10.0, 24.0, -20.0, 38.0, -34.0, 52.0, -48.0, 66.0, 80.0, 94.0}) {
            for (const auto& [side_px, align] :
                 {std::pair{0.0, Align::centre}, std::pair{8.0, Align::left},
                  std::pair{-8.0, Align::right}, std::pair{30.0, Align::left},
                  std::pair{-30.0, Align::right}}) {
                ways.push_back(caption(ring.centre + Point(text(side_px), -text(up_px)), words,
                                       plot_.role, align));
                ways.back().strong = first;
            }
        }
        shapes_.emplace_back(board_.place(ways));
    }

    /// Names at the right ends of the curves, spread apart where curves meet.
    void add_names() {
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < plot_.curves.size(); ++i)
            if (!plot_.curves[i].values_SI.empty())
                order.push_back(i);
        const auto end_px = [&](std::size_t i) {
            return y(in_unit(plot_.curves[i].values_SI.back()));
        };
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return end_px(a) < end_px(b); });
        std::vector<double> wanted;
        for (const std::size_t i : order)
            wanted.push_back(end_px(i));
        const std::vector<double> placed =
            spread_apart(wanted, text(17.0), plot_.frame.low.y(), plot_.frame.high.y());
        for (std::size_t i = 0; i < order.size(); ++i) {
            const Point end(plot_.frame.high.x(), wanted[i]);
            const Point start(plot_.frame.high.x() + text(38.0), placed[i]);
            // A short piece of the curve's own stroke, so that the name needs no key.
            const Stroke stroke = stroke_of(order[i], plot_.role);
            shapes_.emplace_back(
                Line{end + Point(4.0, 0.0), start - Point(text(26.0), 0.0), {Role::hairline, 1.0}});
            shapes_.emplace_back(Line{start - Point(text(24.0), 0.0), start, stroke});
            shapes_.emplace_back(caption(start + Point(text(6.0), text(4.5)),
                                         plot_.curves[order[i]].name, plot_.role, Align::left));
        }
    }

    const SweepPlot& plot_;
    std::vector<Shape>& shapes_;
    LabelBoard board_;
    std::string unit_;
    std::vector<Point> marks_px_;
    std::vector<double> ticks_; ///< of values, in the unit
    double top_ = 1.0;          ///< value at the frame's upper edge, in the unit
};

} // namespace

std::string RangeScale::text(double progress) const {
    return setup::format_number(finest * std::round(at(progress) / finest), {3, false}) + unit;
}

std::string marked_text(const SweepCurve& curve, setup::Dimension dimension,
                        setup::UnitSystem units, const RangeScale& range) {
    std::string text = setup::format_quantity(curve.marked.value_SI, dimension, units);
    constexpr double kNothing_SI = 0.05; // N·m or N: no peak to speak of
    if (dimension != setup::Dimension::number && curve.marked.value_SI < kNothing_SI)
        return text;
    constexpr double kLevelCurve = 0.005; // of the value: the third figure hardly changes
    double least_SI = curve.marked.value_SI;
    double most_SI = least_SI;
    for (const double value_SI : curve.values_SI) {
        least_SI = std::min(least_SI, value_SI);
        most_SI = std::max(most_SI, value_SI);
    }
    return most_SI - least_SI < kLevelCurve * most_SI
               ? text + " throughout"
               : text + " at " + range.text(curve.marked.progress);
}

void add_sweep_plot(const SweepPlot& plot, std::vector<Shape>& shapes) {
    PlotPainter(plot, shapes).paint();
}

std::vector<double> round_ticks(double low, double high, int most) {
    if (!(high - low > 0.0))
        return {low};
    // The least round step not below an even division: the one after the largest below it.
    const double even = (high - low) / (most - 1);
    double step = round_step_below(even);
    while (step < even * (1.0 - 1.0e-9))
        step = round_step_below(2.5 * step);
    std::vector<double> ticks;
    constexpr double kRounding = 1.0e-9; // of a step: ends that are round numbers count as inside
    for (double n = std::ceil(low / step - kRounding); n * step <= high + kRounding * step; ++n)
        ticks.push_back(n * step + 0.0); // no -0
    return ticks;
}

std::vector<double> spread_apart(std::vector<double> wanted_px, double gap_px, double low_px,
                                 double high_px) {
    const std::size_t count = wanted_px.size();
    if (count == 0)
        return wanted_px;
    for (double& one : wanted_px)
        one = std::clamp(one, low_px, std::max(low_px, high_px));
    for (std::size_t i = 1; i < count; ++i)
        wanted_px[i] = std::max(wanted_px[i], wanted_px[i - 1] + gap_px);
    // What was pushed beyond the end pushes the others back.
    wanted_px.back() = std::min(wanted_px.back(), high_px);
    for (std::size_t i = count - 1; i-- > 0;)
        wanted_px[i] = std::min(wanted_px[i], wanted_px[i + 1] - gap_px);
    return wanted_px;
}

} // namespace steelyard::scene
