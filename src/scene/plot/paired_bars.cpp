#include "scene/plot/paired_bars.h"

#include "scene/marks/text_width.h"
#include "setup/units/format_quantity.h"
#include "words/whatif/comparison.h"

#include <algorithm>

namespace steelyard::scene {

namespace {

constexpr double kPairBar_px = 13.0;
constexpr double kPairCorner_px = 3.0;
constexpr double kLetter_px = 16.0; ///< room for "A" at the left
constexpr double kValue_px = 82.0;  ///< room for the number at the right

Box bar_box(Side side) {
    Box box;
    box.fill = side == Side::a ? Role::beam : Role::ink;
    box.outline = Stroke{Role::ink, 1.75};
    return box;
}

/// Places and scale of one set of bars.
class BarPainter {
public:
    BarPainter(const PairedBars& bars, std::vector<Shape>& shapes) : bars_(bars), shapes_(shapes) {
        for (const BarPair& pair : bars.pairs)
            full_ = std::max(
                {full_, pair.a, pair.b, pair.a_tick.value_or(0.0), pair.b_tick.value_or(0.0)});
        room_px_ = std::max(bars.width_px - text(kLetter_px) - text(kValue_px), 20.0);
    }

    void add_pair(const BarPair& pair, const Point& corner_px) {
        const double top_px = corner_px.y();
        left_px_ = corner_px.x();
        zero_px_ = left_px_ + text(kLetter_px);
        const double right_px = left_px_ + bars_.width_px;
        shapes_.emplace_back(make_label({left_px_, top_px + text(16.0)}, pair.name, TextSize::body,
                                        Role::ink, Align::left, pair.chosen));
        const std::string difference = difference_of(pair);
        if (!difference.empty())
            shapes_.emplace_back(
                make_label({right_px, top_px + text(16.0)}, difference, TextSize::caption,
                           pair.chosen ? Role::ink : Role::quiet_ink, Align::right, pair.chosen));
        add_bar(Side::a, pair.a, pair.a_tick, top_px + text(23.0));
        add_bar(Side::b, pair.b, pair.b_tick, top_px + text(40.0));
        // The zero that both grow from.
        shapes_.emplace_back(Line{
            {zero_px_, top_px + text(21.0)}, {zero_px_, top_px + text(55.0)}, {Role::ink, 1.75}});
    }

private:
    double text(double px) const { return px * bars_.text_scale; }

    /// How much B differs; without the part of A, or not at all, where the name leaves no room. The
    /// bars and their numbers say it again.
    std::string difference_of(const BarPair& pair) const {
        const std::string whole =
            words::difference_text(pair.a, pair.b, bars_.dimension, bars_.units);
        const double name_px =
            text_width_px(pair.name, TextSize::body, pair.chosen, bars_.text_scale);
        for (const std::string& words : {whole, whole.substr(0, whole.find(" ("))})
            if (name_px + text(8.0) +
                    text_width_px(words, TextSize::caption, pair.chosen, bars_.text_scale) <=
                bars_.width_px)
                return words;
        return "";
    }

    void add_bar(Side side, double size, const std::optional<double>& tick, double top_px) {
        const double length_px = room_px_ * size / full_;
        const double bar_px = text(kPairBar_px);
        if (length_px >= 0.5) {
            Box box = bar_box(side);
            box.centre = {zero_px_ + 0.5 * length_px, top_px + 0.5 * bar_px};
            box.size_px = {length_px, bar_px};
            box.corner_px = std::min(kPairCorner_px, 0.5 * length_px);
            shapes_.emplace_back(box);
        }
        if (tick) {
            const double at_px = zero_px_ + room_px_ * *tick / full_;
            shapes_.emplace_back(
                Line{{at_px, top_px - 1.0}, {at_px, top_px + bar_px + 1.0}, {Role::load, 2.5}});
        }
        const double base_px = top_px + text(11.0);
        shapes_.emplace_back(make_label({left_px_, base_px}, side == Side::a ? "A" : "B",
                                        TextSize::caption, Role::quiet_ink, Align::left));
        shapes_.emplace_back(make_label({left_px_ + bars_.width_px, base_px},
                                        setup::format_quantity(size, bars_.dimension, bars_.units),
                                        TextSize::body, Role::ink, Align::right));
    }

    const PairedBars& bars_;
    std::vector<Shape>& shapes_;
    double full_ = 1e-9;
    double left_px_ = 0.0; ///< of the present pair
    double zero_px_ = 0.0; ///< of the present pair
    double room_px_ = 0.0;
};

} // namespace

void add_side_badge(Side side, const Point& corner_px, double text_scale,
                    std::vector<Shape>& shapes) {
    const double size_px = kBadge_px * text_scale;
    Box box = bar_box(side);
    box.centre = corner_px + 0.5 * Point(size_px, size_px);
    box.size_px = {size_px, size_px};
    box.corner_px = kPairCorner_px;
    shapes.emplace_back(box);
    shapes.emplace_back(make_label(corner_px + size_px * Point(0.5, 0.76),
                                   side == Side::a ? "A" : "B", TextSize::body,
                                   side == Side::a ? Role::ink : Role::sheet, Align::centre, true));
}

void add_paired_bars(const PairedBars& bars, std::vector<Shape>& shapes) {
    BarPainter painter(bars, shapes);
    for (std::size_t i = 0; i < bars.pairs.size(); ++i) {
        const std::size_t row = i / bars.columns;
        const std::size_t column = i % bars.columns;
        const Point step_px(bars.width_px + bars.between_px, kPair_px * bars.text_scale);
        painter.add_pair(bars.pairs[i],
                         bars.corner_px + Point(static_cast<double>(column) * step_px.x(),
                                                static_cast<double>(row) * step_px.y()));
    }
}

} // namespace steelyard::scene
