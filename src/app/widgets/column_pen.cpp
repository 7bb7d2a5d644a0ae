#include "app/widgets/column_pen.h"

#include "app/widgets/buttons.h"

#include <algorithm>

namespace steelyard::app {

ColumnPen::ColumnPen(const Style& style, const Layout& layout)
    : style_(style), list_(*ImGui::GetWindowDrawList()),
      left_(static_cast<float>(layout.column_at_px.x()) + 24.0F),
      width_(static_cast<float>(layout.column_px.x()) - 48.0F),
      y_(static_cast<float>(layout.column_at_px.y()) - ImGui::GetScrollY()) {}

float ColumnPen::line(const TextStyle& how, std::string_view text) {
    return draw_text(list_, style_, how, {left_, y_}, text);
}

void ColumnPen::paragraph(const TextStyle& how, std::string_view text) {
    y_ = draw_paragraph(list_, style_, how, {left_, y_}, width_, text);
}

void ColumnPen::divider() {
    list_.AddLine({left_, y_}, {left_ + width_, y_}, style_.mark(scene::Role::hairline), 1.0F);
}

void ColumnPen::finish(float below_px) {
    ImGui::SetCursorScreenPos({left_, y_ + below_px});
    ImGui::Dummy({1.0F, 1.0F});
}

bool column_button(const Style& style, const Layout& layout, ColumnPen& pen,
                   std::string_view words) {
    const float foot = static_cast<float>(layout.column_at_px.y() + layout.column_px.y()) -
                       main_button_height(style) - style.px(28.0F);
    const float top = layout.narrow ? pen.y() : std::max(pen.y(), foot);
    const bool pressed = main_button(style, "main", {pen.left(), top}, pen.width(), words);
    pen.finish(top - pen.y() + main_button_height(style) + style.px(20.0F));
    return pressed;
}

} // namespace steelyard::app
