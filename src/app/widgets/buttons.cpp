#include "app/widgets/buttons.h"

#include "app/widgets/press_letters.h"

namespace steelyard::app {

using scene::Role;
using scene::TextSize;

namespace {

void draw_centred(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 corner,
                  ImVec2 size, std::string_view words) {
    draw_text(list, style, how,
              {corner.x + 0.5F * (size.x - text_width(style, how, words)),
               corner.y + 0.5F * size.y + style.px(5.5F)},
              words);
}

} // namespace

bool press_area(const Style& style, const char* id, ImVec2 corner, ImVec2 size) {
    ImGui::SetCursorScreenPos(corner);
    const bool clicked = ImGui::InvisibleButton(id, size);
    return (style.letters != nullptr && style.letters->offer(style)) || clicked;
}

bool word_button(const Style& style, const char* id, ImVec2 at, std::string_view word,
                 bool in_force, bool enabled) {
    TextStyle how{TextSize::body, in_force, Role::quiet_ink};
    const float width_px = text_width(style, how, word);
    const float height_px = style.px(30.0F);
    const ImVec2 corner{at.x - style.px(4.0F), at.y - style.px(21.0F)};
    const ImVec2 size{width_px + style.px(8.0F), height_px};
    bool pressed = false;
    if (enabled) {
        pressed = press_area(style, id, corner, size);
    } else {
        ImGui::SetCursorScreenPos(corner);
        ImGui::InvisibleButton(id, size); // takes the pointer all the same
    }
    const bool hovered = ImGui::IsItemHovered() && enabled;
    if (in_force || hovered)
        how.role = Role::ink;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (!enabled)
        how.role = Role::hairline;
    draw_text(list, style, how, at, word);
    if (in_force) {
        const float below = at.y + style.px(10.0F);
        list.AddLine({at.x, below}, {at.x + width_px, below}, style.mark(Role::ink),
                     style.px(2.5F));
    }
    return pressed;
}

float main_button_height(const Style& style) {
    return style.px(44.0F);
}

bool main_button(const Style& style, const char* id, ImVec2 corner, float width_px,
                 std::string_view words) {
    const float height_px = main_button_height(style);
    const bool pressed = press_area(style, id, corner, {width_px, height_px});
    const double opacity = ImGui::IsItemHovered() ? 0.86 : 1.0;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner, {corner.x + width_px, corner.y + height_px},
                       style.mark(Role::ink, opacity), 6.0F);
    draw_centred(list, style, {TextSize::body, true, Role::sheet}, corner, {width_px, height_px},
                 words);
    return pressed;
}

bool side_button(const Style& style, const char* id, ImVec2 corner, float width_px,
                 std::string_view words, bool enabled) {
    const float height_px = main_button_height(style);
    const bool pressed = enabled && press_area(style, id, corner, {width_px, height_px});
    const bool hovered = enabled && ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 far_corner{corner.x + width_px, corner.y + height_px};
    list.AddRectFilled(corner, far_corner, style.mark(Role::panel), 6.0F);
    if (hovered)
        list.AddRect(corner, far_corner, style.mark(Role::hairline), 6.0F);
    draw_centred(list, style, {TextSize::body, true, enabled ? Role::ink : Role::hairline}, corner,
                 {width_px, height_px}, words);
    return pressed;
}

bool row_button(const Style& style, const char* id, ImVec2 corner, float width_px, float height_px,
                bool chosen) {
    const bool pressed = press_area(style, id, corner, {width_px, height_px});
    const bool hovered = ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 far_corner{corner.x + width_px, corner.y + height_px};
    if (chosen || hovered)
        list.AddRectFilled(corner, far_corner, style.mark(Role::panel), 6.0F);
    if (chosen)
        list.AddRectFilled(corner, {corner.x + style.px(4.0F), far_corner.y}, style.mark(Role::ink),
                           2.0F);
    return pressed;
}

} // namespace steelyard::app
