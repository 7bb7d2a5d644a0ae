#include "app/widgets/column_pen.h"

#include "app/look/formula_text.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/told_text.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace steelyard::app {

ColumnPen::ColumnPen(const Style& style, const Layout& layout)
    : style_(style), list_(*ImGui::GetWindowDrawList()),
      left_(static_cast<float>(layout.column_at_px.x()) + 24.0F),
      width_(static_cast<float>(layout.column_px.x()) - 48.0F),
      y_(static_cast<float>(layout.column_at_px.y()) - ImGui::GetScrollY()) {}

float ColumnPen::line(const TextStyle& how, std::string_view text) {
    return draw_text(list_, style_, how, {left_, y_}, text);
}

void ColumnPen::headline(std::string_view text) {
    const TextStyle large{scene::TextSize::key, true, scene::Role::ink};
    const TextStyle smaller{scene::TextSize::reading, true, scene::Role::ink};
    line(text_width(style_, large, text) <= width_ ? large : smaller, text);
}

void ColumnPen::paragraph(const TextStyle& how, std::string_view text) {
    y_ = draw_paragraph(list_, style_, how, {left_, y_}, width_, text);
}

void ColumnPen::formula(const TextStyle& how, std::string_view text) {
    y_ = draw_formula(list_, style_, how, {left_, y_}, width_, text);
}

void ColumnPen::told(const TextStyle& how, std::string_view text) {
    const std::string id = "told" + std::to_string(texts_told_++);
    y_ = draw_told(list_, style_, id.c_str(), how, {left_, y_}, width_, text);
}

void ColumnPen::divider() {
    list_.AddLine({left_, y_}, {left_ + width_, y_}, style_.mark(scene::Role::hairline), 1.0F);
}

void ColumnPen::finish(float below_px) {
    ImGui::SetCursorScreenPos({left_, y_ + below_px});
    ImGui::Dummy({1.0F, 1.0F});
}

namespace {

/// Height of a column's foot with its action [px].
double foot_px(const Style& style) {
    return main_button_height(style) + style.px(40.0F);
}

/// Where the action goes: at the column's foot, or below what stands there [px].
float action_top(const Style& style, const Layout& layout, const ColumnPen& pen) {
    const float foot = static_cast<float>(layout.column_at_px.y() + layout.column_px.y()) -
                       main_button_height(style) - style.px(28.0F);
    return layout.narrow ? pen.y() : std::max(pen.y(), foot);
}

} // namespace

void begin_column(const Style& style, const Layout& layout) {
    const double kept_px = layout.narrow ? 0.0 : foot_px(style);
    begin_area("column", layout.column_at_px, layout.column_px - scene::Point(0.0, kept_px), true);
}

bool end_column(const Style& style, const Layout& layout, ColumnPen& pen, std::string_view words) {
    if (layout.narrow) {
        const bool pressed = column_button(style, layout, pen, words);
        end_area();
        return pressed;
    }
    pen.finish(style.px(8.0F));
    end_area();
    const scene::Point corner =
        layout.column_at_px + scene::Point(0.0, layout.column_px.y() - foot_px(style));
    begin_area("foot", corner, {layout.column_px.x(), foot_px(style)});
    const auto top = static_cast<float>(corner.y()) + style.px(12.0F);
    const bool pressed = main_button(style, "main", {pen.left(), top}, pen.width(), words);
    end_area();
    return pressed;
}

bool column_button(const Style& style, const Layout& layout, ColumnPen& pen,
                   std::string_view words) {
    const float top = action_top(style, layout, pen);
    const bool pressed = main_button(style, "main", {pen.left(), top}, pen.width(), words);
    pen.finish(top - pen.y() + main_button_height(style) + style.px(20.0F));
    return pressed;
}

FootPress column_buttons(const Style& style, const Layout& layout, ColumnPen& pen,
                         const SideAction& side, std::string_view words) {
    const float top = action_top(style, layout, pen);
    const float gap_px = style.px(8.0F);
    const float side_px = std::round((pen.width() - gap_px) / 3.0F);
    FootPress pressed = FootPress::none;
    if (side_button(style, "side", {pen.left(), top}, side_px, side.words, side.enabled))
        pressed = FootPress::side;
    if (main_button(style, "main", {pen.left() + side_px + gap_px, top},
                    pen.width() - side_px - gap_px, words))
        pressed = FootPress::main;
    pen.finish(top - pen.y() + main_button_height(style) + style.px(20.0F));
    return pressed;
}

} // namespace steelyard::app
