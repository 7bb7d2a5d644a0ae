#include "scene/marks/balance_strip.h"

#include "scene/marks/text_width.h"
#include "setup/units/format_quantity.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kBar_px = 18.0;
constexpr double kCorner_px = 6.0;
constexpr double kGapAtNotch_px = 3.0;

void add_bar(double from_px, double to_px, double top_px, double bar_px, const StripSide& side,
             std::vector<Shape>& shapes) {
    if (to_px - from_px < 0.5)
        return;
    Box bar;
    bar.centre = {0.5 * (from_px + to_px), top_px + 0.5 * bar_px};
    bar.size_px = {to_px - from_px, bar_px};
    bar.corner_px = kCorner_px;
    bar.fill = side.role;
    bar.outline = side.outline;
    shapes.emplace_back(bar);
}

void add_notch(double middle_px, double top_px, double bar_px, std::vector<Shape>& shapes) {
    const Point tip{middle_px, top_px - 10.0};
    shapes.emplace_back(Triangle{tip, tip + Point(-7.0, -9.0), tip + Point(7.0, -9.0), Role::ink});
    shapes.emplace_back(
        Line{{middle_px, top_px - 6.0}, {middle_px, top_px + bar_px + 6.0}, {Role::ink, 2.5}});
}

Label caption(const Point& at, std::string text, Role role, Align align) {
    return make_label(at, std::move(text), TextSize::caption, role, align);
}

/// A side's size, with its name where there is room for it.
std::string words_of(const StripSide& side, bool named, setup::UnitSystem units) {
    const std::string size = setup::format_quantity(side.size, side.dimension, units);
    return named ? side.name + " " + size : size;
}

} // namespace

StripVerdict judge(const StripTorques& torques) {
    const double load = std::abs(torques.load_Nm);
    const double effort = std::abs(torques.effort_Nm);
    const double slack = 1e-9 * std::max(load, effort);
    const double left_over = std::abs(torques.load_Nm + torques.effort_Nm);
    if (left_over <= slack)
        return StripVerdict::balanced;
    if (left_over <= torques.friction_Nm * (1.0 + 1e-9))
        return StripVerdict::friction_holds;
    if (torques.load_Nm * torques.effort_Nm > 0.0)
        return StripVerdict::same_way;
    return load > effort ? StripVerdict::load_wins : StripVerdict::effort_wins;
}

std::string verdict_text(StripVerdict verdict) {
    switch (verdict) {
    case StripVerdict::balanced:
        return "balanced";
    case StripVerdict::friction_holds:
        return "held by friction";
    case StripVerdict::load_wins:
        return "the load wins";
    case StripVerdict::effort_wins:
        return "the effort wins";
    case StripVerdict::same_way:
        return "both turn the same way";
    }
    return {};
}

void add_meeting_strip(const StripSide& left, const StripSide& right, const std::string& verdict,
                       double left_px, double right_px, double top_px, setup::UnitSystem units,
                       double text_scale, std::vector<Shape>& shapes) {
    const double bar_px = kBar_px * text_scale;
    const double middle_px = 0.5 * (left_px + right_px);
    const double reach_px = middle_px - left_px - kGapAtNotch_px;
    const double larger = std::max({left.size, right.size, 1e-12});

    Box track;
    track.centre = {middle_px, top_px + 0.5 * bar_px};
    track.size_px = {right_px - left_px, bar_px};
    track.corner_px = kCorner_px;
    track.fill = Role::panel;
    shapes.emplace_back(track);
    add_bar(left_px, left_px + reach_px * left.size / larger, top_px, bar_px, left, shapes);
    add_bar(right_px - reach_px * right.size / larger, right_px, top_px, bar_px, right, shapes);
    add_notch(middle_px, top_px, bar_px, shapes);

    std::array<std::string, 2> told{words_of(left, true, units), words_of(right, true, units)};
    const double words_px = std::max(text_width_px(told[0], TextSize::caption, false, text_scale),
                                     text_width_px(told[1], TextSize::caption, false, text_scale));
    if (words_px + 14.0 > middle_px - left_px) // place and colour tell them apart
        told = {words_of(left, false, units), words_of(right, false, units)};
    const double above_px = top_px - 8.0 * text_scale;
    shapes.emplace_back(caption({left_px, above_px}, told[0], left.words_role, Align::left));
    shapes.emplace_back(caption({right_px, above_px}, told[1], right.words_role, Align::right));
    shapes.emplace_back(caption({middle_px, top_px + bar_px + 24.0 * text_scale}, verdict,
                                Role::ink, Align::centre));
}

void add_balance_strip(const StripTorques& torques, double left_px, double right_px, double top_px,
                       setup::UnitSystem units, double text_scale, std::vector<Shape>& shapes) {
    const auto side = [](const std::string& name, double torque_Nm, Role role) {
        StripSide one;
        one.name = name;
        one.size = std::abs(torque_Nm);
        one.role = one.words_role = role;
        return one;
    };
    add_meeting_strip(side(torques.load_name, torques.load_Nm, Role::load),
                      side(torques.effort_name, torques.effort_Nm, Role::effort),
                      verdict_text(judge(torques)), left_px, right_px, top_px, units, text_scale,
                      shapes);
}

} // namespace steelyard::scene
