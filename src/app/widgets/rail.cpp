#include "app/widgets/rail.h"

#include <algorithm>

namespace steelyard::app {

std::optional<double> draw_rail(const Style& style, const char* id, ImVec2 corner, float width_px,
                                std::string_view name, double share) {
    const float height_px = style.px(kRailHeight);
    const float grip_px = style.px(11.0F);
    const float from_px = corner.x + grip_px;
    const float way_px = std::max(width_px - 2.0F * grip_px, 1.0F);
    const float middle_px = corner.y + 0.5F * height_px;
    ImGui::SetCursorScreenPos(corner);
    ImGui::InvisibleButton(id, {width_px, height_px});
    const bool held = ImGui::IsItemActive();
    const bool near = held || ImGui::IsItemHovered();
    std::optional<double> now;
    if (held)
        now = std::clamp(static_cast<double>((ImGui::GetIO().MousePos.x - from_px) / way_px), 0.0,
                         1.0);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 grip{from_px + static_cast<float>(now.value_or(share)) * way_px, middle_px};
    list.AddLine({from_px, middle_px}, {from_px + way_px, middle_px},
                 style.mark(scene::Role::hairline), style.px(4.0F));
    list.AddLine({from_px, middle_px}, grip, style.mark(scene::Role::quiet_ink), style.px(4.0F));
    if (near)
        list.AddCircleFilled(grip, 1.7F * grip_px, style.mark(scene::Role::ink, 0.15));
    list.AddCircleFilled(grip, grip_px, style.mark(scene::Role::ink));
    if (style.narration != nullptr)
        style.narration->add_grip(std::string(name), scene::Point(grip.x, grip.y));
    return now;
}

} // namespace steelyard::app
