#include "app/exam/squares.h"

#include "app/widgets/buttons.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr float kSide_px = 26.0F;
constexpr float kGap_px = 4.0F;

std::size_t squares_to_a_line(const Style& style, float width_px) {
    return static_cast<std::size_t>(
        std::max(1.0F, (width_px + style.px(kGap_px)) / style.px(kSide_px + kGap_px)));
}

void draw_square(const Style& style, ImVec2 corner, std::size_t number, const Square& square) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float side = style.px(kSide_px);
    const ImVec2 far_corner{corner.x + side, corner.y + side};
    const Role fill = square.right ? (*square.right ? Role::right : Role::wrong) : Role::quiet_ink;
    if (square.filled)
        list.AddRectFilled(corner, far_corner, style.mark(fill), 4.0F);
    list.AddRect(corner, far_corner, style.mark(square.present ? Role::ink : Role::quiet_ink), 4.0F,
                 0, square.present ? style.px(3.0F) : 1.0F);
    if (square.marked)
        list.AddTriangleFilled({far_corner.x - style.px(11.0F), corner.y}, {far_corner.x, corner.y},
                               {far_corner.x, corner.y + style.px(11.0F)}, style.mark(Role::load));
    const TextStyle how{TextSize::caption, square.present, square.filled ? Role::sheet : Role::ink};
    const std::string text = std::to_string(number);
    draw_text(list, style, how,
              {corner.x + 0.5F * (side - text_width(style, how, text)),
               corner.y + 0.5F * side + style.px(4.5F)},
              text);
    if (square.right && !*square.right)
        list.AddLine({corner.x + style.px(5.0F), far_corner.y - style.px(4.0F)},
                     {far_corner.x - style.px(5.0F), far_corner.y - style.px(4.0F)},
                     style.mark(Role::sheet), style.px(2.0F));
}

} // namespace

float squares_height(const Style& style, float width_px, std::size_t count) {
    const std::size_t columns = squares_to_a_line(style, width_px);
    const std::size_t lines = (count + columns - 1) / columns;
    return static_cast<float>(lines) * style.px(kSide_px + kGap_px) + style.px(4.0F);
}

std::optional<std::size_t> draw_squares(const Style& style, ImVec2 at, float width_px,
                                        const std::vector<Square>& squares) {
    const std::size_t columns = squares_to_a_line(style, width_px);
    const float step = style.px(kSide_px + kGap_px);
    std::optional<std::size_t> pressed;
    for (std::size_t i = 0; i < squares.size(); ++i) {
        const std::size_t line = i / columns;
        const ImVec2 corner{at.x + static_cast<float>(i % columns) * step,
                            at.y + static_cast<float>(line) * step};
        ImGui::PushID(static_cast<int>(i));
        if (press_area(style, "square", corner, {style.px(kSide_px), style.px(kSide_px)}))
            pressed = i;
        ImGui::PopID();
        draw_square(style, corner, i + 1, squares[i]);
    }
    return pressed;
}

} // namespace steelyard::app
