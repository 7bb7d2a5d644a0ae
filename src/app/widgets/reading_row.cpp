#include "app/widgets/reading_row.h"

#include "app/widgets/buttons.h"

namespace steelyard::app {

bool draw_reading_row(const Style& style, const std::string& name, const std::string& value,
                      scene::Role role, ColumnPen& pen) {
    ImGui::PushID(name.c_str());
    const bool pressed = row_button(style, "row", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                                    style.px(36.0F), false);
    ImGui::PopID();
    const float base = pen.y() + style.px(25.0F);
    const float name_px =
        draw_text(pen.list(), style, {scene::TextSize::body, false, scene::Role::quiet_ink},
                  {pen.left(), base}, name);
    TextStyle how{scene::TextSize::reading, false, role};
    if (name_px + text_width(style, how, value) > pen.width() - style.px(8.0F))
        how.size = scene::TextSize::body;
    draw_text(pen.list(), style, how,
              {pen.left() + pen.width() - text_width(style, how, value), base}, value);
    pen.skip(36.0F);
    return pressed;
}

} // namespace steelyard::app
