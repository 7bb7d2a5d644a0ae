#include "app/widgets/word_row.h"

#include "app/widgets/buttons.h"

namespace steelyard::app {

std::optional<std::size_t> draw_word_row(const Style& style, const char* id,
                                         const std::vector<RowWord>& words, ImVec2& at,
                                         float right_px) {
    std::optional<std::size_t> pressed;
    ImGui::PushID(id);
    float x = at.x;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const RowWord& one = words[i];
        const float width_px = text_width(style, {scene::TextSize::body, one.in_force}, one.word);
        if (x > at.x && x + width_px > right_px) {
            x = at.x;
            at.y += style.px(34.0F);
        }
        ImGui::PushID(static_cast<int>(i));
        if (word_button(style, "word", {x, at.y}, one.word, one.in_force))
            pressed = i;
        ImGui::PopID();
        x += width_px + style.px(24.0F);
    }
    ImGui::PopID();
    return pressed;
}

} // namespace steelyard::app
