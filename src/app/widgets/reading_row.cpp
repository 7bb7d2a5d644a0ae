#include "app/widgets/reading_row.h"

#include "app/widgets/buttons.h"

namespace steelyard::app {

bool draw_reading_row(const Style& style, const std::string& name, const std::string& value,
                      scene::Role role, ColumnPen& pen, scene::TextSize size) {
    const TextStyle named{scene::TextSize::body, false, scene::Role::quiet_ink};
    TextStyle how{size, false, role};
    if (text_width(style, named, name) + text_width(style, how, value) >
        pen.width() - style.px(8.0F))
        how.size = scene::TextSize::body;
    const float value_px = text_width(style, how, value);
    // A long name goes on below its number.
    const float room_px = pen.width() - value_px - style.px(8.0F);
    const auto lines = static_cast<float>(paragraph_lines(style, named, room_px, name));
    const float height_px =
        style.px(36.0F) + (lines - 1.0F) * line_height(style, scene::TextSize::body);
    ImGui::PushID(name.c_str());
    const bool pressed = row_button(style, "row", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                                    height_px, false);
    ImGui::PopID();
    const float base = pen.y() + style.px(25.0F);
    draw_paragraph(pen.list(), style, named, {pen.left(), base}, room_px, name);
    draw_text(pen.list(), style, how, {pen.left() + pen.width() - value_px, base}, value);
    pen.skip_px(height_px);
    return pressed;
}

} // namespace steelyard::app
