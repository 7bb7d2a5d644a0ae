#include "app/notice/notice.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <algorithm>

namespace steelyard::app {

using scene::Role;
using scene::TextSize;

bool draw_notice(const Style& style, const scene::Point& window_px,
                 const std::vector<KeyPress>& keys, const std::string& sentence) {
    const TextStyle how{TextSize::body, false, Role::wrong};
    const float pad_px = style.px(20.0F);
    const auto room_px = static_cast<float>(window_px.x()) - 48.0F;
    const float width_px = std::min(room_px, style.px(760.0F));
    const float words_px = width_px - 2.0F * pad_px;
    const auto lines = static_cast<float>(paragraph_lines(style, how, words_px, sentence));
    const float height_px = lines * line_height(style, how.size) + style.px(84.0F);
    const ImVec2 at{24.0F, std::max(24.0F, static_cast<float>(window_px.y()) - height_px - 24.0F)};
    const ImVec2 end{at.x + width_px, at.y + height_px};
    ImGui::SetNextWindowFocus();
    begin_area("notice", {at.x, at.y}, {width_px, height_px});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(at, end, style.mark(Role::panel), 6.0F);
    list.AddRect(at, end, style.mark(Role::ink), 6.0F, 0, 1.5F);
    draw_paragraph(list, style, how, {at.x + pad_px, at.y + style.px(34.0F)}, words_px, sentence);
    bool gone = word_button(style, "gone", {at.x + pad_px, end.y - style.px(22.0F)},
                            "I have read it", true);
    end_area();
    for (const KeyPress& key : keys)
        gone = gone || key.key == key::kEscape;
    return gone;
}

} // namespace steelyard::app
