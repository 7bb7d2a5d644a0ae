#include "app/widgets/chip.h"

#include "app/widgets/buttons.h"

namespace steelyard::app {

using scene::Role;
using scene::TextSize;

namespace {

constexpr TextStyle kChipName{TextSize::caption, false, Role::quiet_ink};
constexpr TextStyle kValue{TextSize::body, true, Role::ink};

} // namespace

float chip_width(const Style& style, const std::string& name, const std::string& value) {
    return text_width(style, kChipName, name) + text_width(style, kValue, value) + style.px(28.0F);
}

DrawnChip draw_chip(const Style& style, const ImVec2& corner, const std::string& name,
                    const std::string& value) {
    const float pad = style.px(10.0F);
    DrawnChip chip;
    chip.width_px = chip_width(style, name, value);
    const float height_px = style.px(34.0F);
    chip.pressed = press_area(style, name.c_str(), corner, {chip.width_px, height_px});
    const bool hovered = ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 far_corner{corner.x + chip.width_px, corner.y + height_px};
    list.AddRectFilled(corner, far_corner, style.mark(Role::panel), 6.0F);
    if (hovered)
        list.AddRect(corner, far_corner, style.mark(Role::ink), 6.0F, 0, 1.5F);
    const float base = corner.y + style.px(22.0F);
    const float name_px = draw_text(list, style, kChipName, {corner.x + pad, base}, name);
    draw_text(list, style, kValue, {corner.x + pad + name_px + style.px(8.0F), base}, value);
    return chip;
}

} // namespace steelyard::app
