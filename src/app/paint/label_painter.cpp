#include "app/paint/label_painter.h"

#include <cmath>

namespace steelyard::app {

namespace {

void turn_vertices(ImDrawList& list, int first, const ImVec2& about, double turn_rad) {
    const auto c = static_cast<float>(std::cos(turn_rad));
    const auto s = static_cast<float>(std::sin(turn_rad));
    for (int i = first; i < list.VtxBuffer.Size; ++i) {
        ImVec2& at = list.VtxBuffer[i].pos;
        const ImVec2 from{at.x - about.x, at.y - about.y};
        at = {about.x + from.x * c - from.y * s, about.y + from.x * s + from.y * c};
    }
}

} // namespace

void paint_label(const scene::Label& label, const scene::Point& offset_px, const Style& style,
                 ImDrawList& list) {
    const TextStyle how{label.size, label.strong, label.role};
    const float width_px = text_width(style, how, label.text);
    const ImVec2 at{static_cast<float>(label.at.x() + offset_px.x()),
                    static_cast<float>(label.at.y() + offset_px.y())};
    float left_px = at.x;
    if (label.align == scene::Align::centre)
        left_px -= 0.5F * width_px;
    if (label.align == scene::Align::right)
        left_px -= width_px;
    const int first = list.VtxBuffer.Size;
    draw_text(list, style, how, {left_px, at.y}, label.text);
    if (label.turn_rad != 0.0)
        turn_vertices(list, first, at, label.turn_rad);
}

void paint_labels(const scene::Drawing& drawing, const scene::Point& offset_px, const Style& style,
                  ImDrawList& list) {
    for (const scene::Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<scene::Label>(&shape))
            paint_label(*label, offset_px, style, list);
}

} // namespace steelyard::app
