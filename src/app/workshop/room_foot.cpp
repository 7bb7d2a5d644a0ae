#include "app/workshop/room_foot.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr TextStyle kQuiet{TextSize::body, false, Role::quiet_ink};

// At 100 % of a room's scale.
constexpr float kButtonHeight = 22.0F;
constexpr float kButtonPad = 9.0F;
constexpr float kGap = 5.0F;
constexpr float kPitch = 9.0F; ///< between the notches of the steps

/// Sets buttons from the right end of the line to the left, and text from the left to the right.
class FootPen {
public:
    FootPen(const Style& style, const FootLine& line)
        : style_(style), left_(line.left_px), right_(line.right_px),
          top_(line.foot_px - style.px(kRoomFoot - 2.0F)),
          base_(top_ + style.px(0.5F * kButtonHeight + 5.6F)) {}

    /// At the right end of what is left of the line; where it is not drawn its place stays free. A
    /// quiet one has no ground.
    bool button(const char* words, bool drawn = true, bool quiet = false) {
        const float width_px = width_of(words);
        right_ -= width_px;
        const bool pressed = drawn && draw_button(words, right_, width_px, quiet);
        right_ -= style_.px(kGap);
        return pressed;
    }

    bool button_at_left(const char* words) {
        const float width_px = width_of(words);
        const bool pressed = draw_button(words, left_, width_px, false);
        left_ += width_px + style_.px(kGap);
        return pressed;
    }

    void text(const char* words) {
        left_ += draw_text(*ImGui::GetWindowDrawList(), style_, kQuiet, {left_, base_}, words) +
                 style_.px(2.0F * kGap);
    }

    /// A small beam with a notch for each step, solid as far as the lesson has come, where there is
    /// room for it.
    void steps(std::size_t step, std::size_t count) {
        const float width_px = style_.px(kPitch) * static_cast<float>(count);
        right_ -= style_.px(2.0F * kGap);
        const float left_px = right_ - width_px;
        if (left_px < left_)
            return;
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const float beam_px = base_;
        list.AddRectFilled({left_px, beam_px}, {right_, beam_px + style_.px(1.2F)},
                           style_.mark(Role::quiet_ink));
        for (std::size_t i = 0; i < count; ++i) {
            const float x = left_px + style_.px(kPitch) * (static_cast<float>(i) + 0.5F);
            const float stroke_px = std::max(1.0F, std::round(style_.px(i <= step ? 1.8F : 0.5F)));
            const float notch_px = std::round(x - 0.5F * stroke_px); // on whole pixels
            list.AddRectFilled({notch_px, beam_px - style_.px(5.0F)},
                               {notch_px + stroke_px, beam_px}, style_.mark(Role::quiet_ink));
            if (i == step)
                list.AddTriangleFilled({x - style_.px(3.0F), beam_px - style_.px(11.5F)},
                                       {x + style_.px(3.0F), beam_px - style_.px(11.5F)},
                                       {x, beam_px - style_.px(6.5F)},
                                       style_.mark(Role::quiet_ink));
        }
    }

private:
    float width_of(const char* words) const {
        return text_width(style_, {TextSize::body, true}, words) + style_.px(2.0F * kButtonPad);
    }

    bool draw_button(const char* words, float left_px, float width_px, bool quiet) const {
        const ImVec2 corner{left_px, top_};
        const ImVec2 far_corner{left_px + width_px, top_ + style_.px(kButtonHeight)};
        ImGui::SetCursorScreenPos(corner);
        const bool pressed = ImGui::InvisibleButton(words, {width_px, style_.px(kButtonHeight)});
        ImDrawList& list = *ImGui::GetWindowDrawList();
        if (!quiet)
            list.AddRectFilled(corner, far_corner, style_.mark(Role::panel), 6.0F);
        if (ImGui::IsItemHovered())
            list.AddRect(corner, far_corner, style_.mark(Role::quiet_ink), 6.0F, 0,
                         style_.px(0.6F));
        draw_text(list, style_, {TextSize::body, !quiet, quiet ? Role::quiet_ink : Role::ink},
                  {corner.x + style_.px(kButtonPad), base_}, words);
        return pressed;
    }

    const Style& style_;
    float left_;
    float right_;
    float top_;
    float base_;
};

/// Far from where Leave was pressed, so that a second press there does not leave.
FootWishes ask_to_leave(FootPen& pen) {
    FootWishes wishes;
    wishes.leave = pen.button_at_left("Leave the lesson (Escape)");
    if (pen.button("Stay"))
        wishes.intent = Stay{};
    return wishes;
}

} // namespace

FootWishes draw_room_foot(const Style& style, const FootLine& line, const ShowModel& show,
                          std::size_t step, const char* caution) {
    FootPen pen(style, line);
    if (caution != nullptr)
        pen.text(caution);
    if (show.asks_to_leave)
        return ask_to_leave(pen);
    FootWishes wishes;
    const bool reveals = show.lesson_step().has_reveal() && !show.now().revealed;
    if (pen.button("Next", reveals || !show.at_end()))
        wishes.intent = GoOn{};
    if (pen.button("Back", show.step > 0))
        wishes.intent = GoBack{};
    if (pen.button("Leave", true, true))
        wishes.intent = AskToLeave{};
    pen.steps(step, show.lesson->steps.size());
    return wishes;
}

} // namespace steelyard::app
