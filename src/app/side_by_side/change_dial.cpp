#include "app/side_by_side/change_dial.h"

#include "app/look/text_styles.h"
#include "words/whatif/whatif_words.h"

#include <algorithm>
#include <utility>

namespace steelyard::app {

namespace {

using mechanics::AllowedSpan;
using mechanics::ChangeUnit;
using scene::Role;

std::string value_text(const DialReading& reading, double value) {
    return words::change_value_text(value, reading.range.unit, reading.units);
}

const AllowedSpan* present_span(const DialReading& reading) {
    if (reading.spans == nullptr)
        return nullptr;
    for (const AllowedSpan& span : *reading.spans)
        if (span.span.low <= reading.range.present && reading.range.present <= span.span.high)
            return &span;
    return nullptr;
}

/// "; beyond 45.2 kg the body would topple", or nothing where the range simply ends.
std::string stop_text(const DialReading& reading, const mechanics::Limit& limit, double at) {
    if (limit.kind == mechanics::LimitKind::range_end)
        return {};
    return "; beyond " + value_text(reading, at) + " " + words::limit_phrase(limit);
}

} // namespace

mechanics::Interval dial_range(const mechanics::ChangeRange& range, std::optional<double> aim) {
    if (range.unit != ChangeUnit::kilogram && range.unit != ChangeUnit::newton)
        return range.allowed;
    const double least = range.unit == ChangeUnit::kilogram ? 10.0 : 100.0;
    const double most = std::max({2.0 * range.present, 1.25 * aim.value_or(0.0), least});
    return {range.allowed.low, std::min(range.allowed.high, most)};
}

void turn_to(ChangeDial& dial, const DialSubject& change, const mechanics::ChangeRange& range,
             std::optional<double> aim) {
    const bool other = dial.of != change;
    const bool outside = range.present < dial.shown.low || range.present > dial.shown.high;
    if (!other && (dial.held || !outside))
        return;
    dial = {change, dial_range(range, aim), false, other ? dial.run + 1 : dial.run};
}

std::string span_text(const DialReading& reading) {
    const AllowedSpan* span = present_span(reading);
    if (span == nullptr)
        return {};
    const std::string stops = stop_text(reading, span->below, span->span.low) +
                              stop_text(reading, span->above, span->span.high);
    if (stops.empty())
        return {};
    return "From " + value_text(reading, span->span.low) + " to " +
           value_text(reading, span->span.high) + stops + ".";
}

std::optional<double> draw_change_dial(const Style& style, const DialReading& reading,
                                       const DialSubject& of, ColumnPen& pen, ChangeDial& dial) {
    const double present = reading.range.present;
    turn_to(dial, of, reading.range, reading.aim);
    const float inset = style.px(10.0F);
    const float left = pen.left() + inset;
    const float width = pen.width() - 2.0F * inset;
    const float middle = pen.y() + style.px(14.0F);
    const double span = std::max(dial.shown.high - dial.shown.low, 1e-9);
    const auto place = [&](double value) {
        const double share = std::clamp((value - dial.shown.low) / span, 0.0, 1.0);
        return left + width * static_cast<float>(share);
    };

    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    ImGui::InvisibleButton("dial", {pen.width(), style.px(28.0F)});
    if (std::exchange(dial.held, ImGui::IsItemActive()) && !dial.held)
        ++dial.run; // let go: what comes next is another step back
    std::optional<double> dragged;
    if (dial.held) {
        const double share =
            std::clamp(static_cast<double>((ImGui::GetIO().MousePos.x - left) / width), 0.0, 1.0);
        const double value = dial.shown.low + share * span;
        if (ImGui::IsMouseClicked(ImGuiMouseButton_Left) || ImGui::GetIO().MouseDelta.x != 0.0F)
            dragged = std::clamp(value, reading.range.allowed.low, reading.range.allowed.high);
    }

    ImDrawList& list = pen.list();
    list.AddLine({left, middle}, {left + width, middle}, style.mark(Role::hairline), 3.0F);
    if (reading.spans != nullptr)
        for (const AllowedSpan& allowed : *reading.spans)
            list.AddLine({place(allowed.span.low), middle}, {place(allowed.span.high), middle},
                         style.mark(Role::quiet_ink), 5.0F);
    if (reading.aim) {
        const float at = place(*reading.aim);
        const float size = style.px(6.0F);
        list.AddTriangleFilled(
            {at, middle - style.px(4.0F)}, {at - size, middle - style.px(4.0F) - 1.6F * size},
            {at + size, middle - style.px(4.0F) - 1.6F * size}, style.mark(Role::load));
    }
    if (style.narration != nullptr)
        style.narration->add_grip("dial", {place(present), middle});
    const bool hovered = ImGui::IsItemHovered() || dial.held;
    list.AddCircleFilled({place(present), middle}, style.px(hovered ? 9.0F : 8.0F),
                         style.mark(Role::ink));
    pen.skip(44.0F);
    draw_text(list, style, kCaption, {pen.left(), pen.y()}, value_text(reading, dial.shown.low));
    const std::string high = value_text(reading, dial.shown.high);
    draw_text(list, style, kCaption,
              {pen.left() + pen.width() - text_width(style, kCaption, high), pen.y()}, high);
    const std::string now = value_text(reading, present);
    const TextStyle strong{scene::TextSize::caption, true, Role::ink};
    draw_text(list, style, strong,
              {pen.left() + 0.5F * (pen.width() - text_width(style, strong, now)), pen.y()}, now);
    pen.skip(20.0F);
    const std::string spans = span_text(reading);
    if (!spans.empty())
        pen.paragraph(kCaption, spans);
    return dragged;
}

} // namespace steelyard::app
