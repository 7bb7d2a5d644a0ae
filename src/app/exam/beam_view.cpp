#include "app/exam/beam_view.h"

#include "app/look/text_styles.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

// Heights from the top of the strip, at 100 %.
constexpr float kNumberBase = 14.0F;
constexpr float kPointerTop = 2.0F;
constexpr float kPointerTip = 16.0F;
constexpr float kLongNotchTop = 19.0F;
constexpr float kNotchTop = 24.0F;
constexpr float kBeamTop = 36.0F;
constexpr float kBeamFoot = 41.0F;
constexpr float kWeightMiddle = 60.0F;
constexpr float kWeightHalf = 6.0F; ///< half its height; on a crowded beam it is slimmer, not lower
constexpr float kPointerHalf = 9.0F; ///< half its width

/// How wide marks may be on this beam: on a crowded one they are finer.
float finer(const BeamLayout& beam, float at_100_percent, float share_of_pitch) {
    return std::min(beam.scale * at_100_percent, share_of_pitch * beam.pitch_px());
}

/// The shape of a notch, whose colour only repeats what it says.
/// @param width_px  of a solid notch
/// @param arm_px    half the width of a cross
void draw_sign(ImDrawList& list, const Style& style, NotchSign sign, ImVec2 foot, float height_px,
               float width_px, float arm_px) {
    // On whole pixels, or hairlines would differ.
    const auto stroke = [&](Role role, float stroke_px) {
        const float whole_px = std::max(1.0F, std::round(stroke_px));
        const float left_px = std::round(foot.x - 0.5F * whole_px);
        list.AddRectFilled({left_px, foot.y - height_px}, {left_px + whole_px, foot.y},
                           style.mark(role));
    };
    switch (sign) {
    case NotchSign::open:
    case NotchSign::unanswered:
        return stroke(Role::quiet_ink, 1.0F);
    case NotchSign::answered:
        return stroke(Role::ink, width_px);
    case NotchSign::right:
        return stroke(Role::right, width_px);
    case NotchSign::wrong: {
        const float y = foot.y - style.px(2.0F) - arm_px;
        const ImU32 ink = style.mark(Role::wrong);
        const float stroke_px = std::min(style.px(2.5F), 0.75F * arm_px);
        list.AddLine({foot.x - arm_px, y - arm_px}, {foot.x + arm_px, y + arm_px}, ink, stroke_px);
        list.AddLine({foot.x - arm_px, y + arm_px}, {foot.x + arm_px, y - arm_px}, ink, stroke_px);
        return;
    }
    }
}

/// A part of the beam's length that something stands over [px].
struct Span {
    float from_px = 0.0F;
    float to_px = 0.0F;
};

class BeamPen {
public:
    BeamPen(const Style& style, const BeamLayout& beam, const std::vector<Notch>& notches)
        : style_(style), beam_(beam), notches_(notches), list_(*ImGui::GetWindowDrawList()),
          every_(beam.numbered_every(text_width(style, kCaption, std::to_string(notches.size())))) {
    }

    bool is_numbered(std::size_t notch) const { return (notch + 1) % every_ == 0; }

    void draw_beam() const {
        const ImVec2 low{beam_.left_px, beam_.y(kBeamTop)};
        const ImVec2 high{beam_.left_px + beam_.width_px, beam_.y(kBeamFoot)};
        list_.AddRectFilled(low, high, style_.mark(Role::ink), 0.5F * (high.y - low.y));
        for (std::size_t i = 0; i < notches_.size(); ++i) {
            const float top = is_numbered(i) ? kLongNotchTop : kNotchTop;
            draw_sign(list_, style_, notches_[i].sign, {x_of(i), beam_.y(kBeamTop)},
                      beam_.scale * (kBeamTop - top), finer(beam_, 4.5F, 0.38F),
                      finer(beam_, 4.0F, 0.32F));
            if (notches_[i].come_back)
                draw_weight(i, true);
        }
    }

    /// Numbers, but for those that would lie under something else.
    void draw_numbers(const std::vector<Span>& taken) const {
        const float gap_px = style_.px(4.0F);
        for (std::size_t i = every_ - 1; i < notches_.size(); i += every_) {
            const std::string number = std::to_string(i + 1);
            const float half_px = 0.5F * text_width(style_, kCaption, number);
            const bool is_free = std::all_of(taken.begin(), taken.end(), [&](const Span& span) {
                return x_of(i) + half_px + gap_px < span.from_px ||
                       x_of(i) - half_px - gap_px > span.to_px;
            });
            if (is_free)
                draw_text(list_, style_, kCaption, {x_of(i) - half_px, beam_.y(kNumberBase)},
                          number);
        }
    }

    Span draw_pointer(double notch) const {
        const float x = beam_.at(notch);
        const float half_px = style_.px(kPointerHalf);
        list_.AddTriangleFilled({x - half_px, beam_.y(kPointerTop)},
                                {x + half_px, beam_.y(kPointerTop)}, {x, beam_.y(kPointerTip)},
                                style_.mark(Role::ink));
        return {x - half_px, x + half_px};
    }

    /// A weight on its thread; hollow while it is only offered.
    void draw_weight(std::size_t notch, bool solid) const {
        const float x = x_of(notch);
        const float half_px = finer(beam_, 6.0F, 0.38F);
        const ImVec2 corner{x - half_px, beam_.y(kWeightMiddle - kWeightHalf)};
        const ImVec2 far_corner{x + half_px, beam_.y(kWeightMiddle + kWeightHalf)};
        const ImU32 ink = style_.mark(solid ? Role::ink : Role::quiet_ink);
        list_.AddLine({x, beam_.y(kBeamFoot)}, {x, corner.y}, ink, style_.px(1.5F));
        if (solid)
            list_.AddRectFilled(corner, far_corner, ink, half_px);
        else
            list_.AddRect(corner, far_corner, ink, half_px, 0, style_.px(1.5F));
    }

    /// What a notch has to say, over it, or beside the pointer where that stands there.
    Span draw_words(std::size_t notch, const std::optional<Span>& pointer,
                    const std::string& words) const {
        const TextStyle how{TextSize::caption, true, Role::ink};
        const float width_px = text_width(style_, how, words);
        const float end_px = beam_.left_px + beam_.width_px - width_px;
        float left_px = std::clamp(x_of(notch) - 0.5F * width_px, beam_.left_px, end_px);
        const float gap_px = style_.px(6.0F);
        if (pointer && left_px < pointer->to_px + gap_px &&
            left_px + width_px > pointer->from_px - gap_px) {
            const float after_px = pointer->to_px + gap_px;
            const float before_px = pointer->from_px - gap_px - width_px;
            const bool is_after = 2.0F * x_of(notch) >= pointer->from_px + pointer->to_px;
            left_px = (is_after && after_px <= end_px) || before_px < beam_.left_px ? after_px
                                                                                    : before_px;
        }
        draw_text(list_, style_, how, {left_px, beam_.y(kNumberBase)}, words);
        return {left_px, left_px + width_px};
    }

private:
    float x_of(std::size_t notch) const { return beam_.at(static_cast<double>(notch)); }

    const Style& style_;
    const BeamLayout& beam_;
    const std::vector<Notch>& notches_;
    ImDrawList& list_;
    std::size_t every_;
};

std::string notch_words(const Notch& notch, std::size_t index) {
    const auto sign = [&]() -> const char* {
        switch (notch.sign) {
        case NotchSign::open:
            return "no answer yet";
        case NotchSign::answered:
            return "answered";
        case NotchSign::right:
            return "right";
        case NotchSign::wrong:
            return "wrong";
        case NotchSign::unanswered:
            return "no answer";
        }
        return "";
    };
    return fmt::format("{}: {}{}", index + 1, sign(), notch.come_back ? ", to come back to" : "");
}

/// For whoever follows the narration: where the notches, the weights and the pointer stand.
void tell(const Style& style, const BeamLayout& beam, const std::vector<Notch>& notches,
          std::optional<double> pointer) {
    if (style.narration == nullptr)
        return;
    const auto middle = [&](double notch, float at_100_percent) {
        return scene::Point(beam.at(notch), beam.y(at_100_percent));
    };
    for (std::size_t i = 0; i < notches.size(); ++i) {
        const auto notch = static_cast<double>(i);
        style.narration->add_grip(fmt::format("notch {}", i + 1),
                                  middle(notch, 0.5F * (kNotchTop + kBeamTop)));
        style.narration->add_grip("notch " + notch_words(notches[i], i), middle(notch, kNotchTop));
        if (notches[i].come_back)
            style.narration->add_grip(fmt::format("weight {}", i + 1),
                                      middle(notch, kWeightMiddle));
    }
    if (pointer)
        style.narration->add_grip("pointer", middle(*pointer, 0.5F * (kPointerTop + kPointerTip)));
}

/// What of the beam the mouse is on, and what it does there.
struct BeamTouch {
    BeamWishes wishes;
    std::optional<std::size_t> over_notch;
    std::optional<std::size_t> over_weight;
};

/// Takes a click away from the rest of the frame: an answer line keeps its caret.
bool take_click() {
    return std::exchange(ImGui::GetIO().MouseClicked[ImGuiMouseButton_Left], false);
}

BeamTouch take_mouse(const BeamLayout& beam, bool hangs) {
    BeamTouch touch;
    const float mouse_px = ImGui::GetIO().MousePos.x;
    ImGui::SetCursorScreenPos({beam.left_px, beam.top_px});
    const bool pressed =
        ImGui::InvisibleButton("beam", {beam.width_px, beam.scale * kBeamStrip_px});
    if (ImGui::IsItemActive())
        touch.wishes.held = beam.nearest(mouse_px);
    else if (pressed || ImGui::IsItemDeactivated())
        touch.wishes.go_to = beam.nearest(mouse_px);
    else if (ImGui::IsItemHovered())
        touch.over_notch = beam.nearest(mouse_px);
    if (!hangs)
        return touch;
    const ImVec2 corner{beam.left_px, beam.y(kBeamStrip_px)};
    const ImVec2 far_corner{corner.x + beam.width_px, beam.y(kBeamHeight_px)};
    if (ImGui::IsWindowHovered(ImGuiHoveredFlags_AllowWhenBlockedByActiveItem) &&
        ImGui::IsMouseHoveringRect(corner, far_corner) && !touch.wishes.held) {
        touch.over_weight = beam.nearest(mouse_px);
        if (take_click())
            touch.wishes.hang = touch.over_weight;
    }
    return touch;
}

/// Letters stand at the numbered notches: at all they would lie on one another.
std::optional<std::size_t> pressed_by_letters(const Style& style, const BeamLayout& beam,
                                              const BeamPen& pen) {
    if (style.letters == nullptr)
        return std::nullopt;
    std::optional<std::size_t> pressed;
    for (std::size_t i = 0; i < beam.count; ++i) {
        if (!pen.is_numbered(i))
            continue;
        ImGui::PushID(static_cast<int>(i));
        const float half_px = 0.5F * beam.pitch_px();
        if (press_area(style, "notch",
                       {beam.at(static_cast<double>(i)) - half_px, beam.y(kNotchTop)},
                       {2.0F * half_px, style.px(1.0F)}))
            pressed = i;
        ImGui::PopID();
    }
    return pressed;
}

} // namespace

std::vector<Notch> notches_of(const learner::Exam& exam) {
    std::vector<Notch> notches;
    for (const learner::ExamItem& item : exam.items)
        notches.push_back(
            {item.answer.empty() ? NotchSign::open : NotchSign::answered, item.come_back});
    return notches;
}

std::vector<Notch> notches_of(const learner::Exam& exam, const learner::ExamReport& report) {
    std::vector<Notch> notches;
    for (const learner::ExamItem& item : exam.items)
        notches.push_back({NotchSign::unanswered, item.come_back});
    for (const learner::ExamMark& mark : report.marks)
        if (mark.answered || mark.right)
            notches[mark.item].sign = mark.right ? NotchSign::right : NotchSign::wrong;
    return notches;
}

BeamLayout lay_out_beam(const Style& style, const Layout& layout, std::size_t count) {
    BeamLayout beam;
    beam.left_px = 24.0F;
    beam.top_px = style.px(66.0F);
    beam.width_px = static_cast<float>(layout.stage_px.x()) - 2.0F * beam.left_px;
    beam.count = count;
    beam.scale = style.fonts.scale;
    return beam;
}

void begin_beam_area(const Layout& layout, const BeamLayout& beam, float below_px) {
    begin_area("beam", {0.0, beam.top_px},
               {layout.stage_px.x(), beam.scale * kBeamHeight_px + below_px});
}

BeamWishes draw_beam(const Style& style, const BeamLayout& beam, const std::vector<Notch>& notches,
                     std::optional<double> pointer, bool hangs) {
    if (notches.empty())
        return {};
    const BeamPen pen(style, beam, notches);
    BeamTouch touch = take_mouse(beam, hangs);
    if (const auto pressed = pressed_by_letters(style, beam, pen))
        touch.wishes.go_to = pressed;
    if (touch.wishes.held)
        pointer = static_cast<double>(*touch.wishes.held);
    pen.draw_beam();
    std::vector<Span> taken;
    std::optional<Span> pointer_span;
    if (pointer)
        taken.push_back(*(pointer_span = pen.draw_pointer(*pointer)));
    if (touch.over_weight && !notches[*touch.over_weight].come_back)
        pen.draw_weight(*touch.over_weight, false);
    const auto over = touch.wishes.held  ? touch.wishes.held
                      : touch.over_notch ? touch.over_notch
                                         : touch.over_weight;
    if (over)
        taken.push_back(pen.draw_words(*over, pointer_span, notch_words(notches[*over], *over)));
    pen.draw_numbers(taken);
    tell(style, beam, notches, pointer);
    return touch.wishes;
}

void draw_beam_legend(const Style& style, ImVec2 base, const std::vector<Notch>& notches) {
    struct Line {
        NotchSign sign;
        const char* words;
    };
    constexpr std::array kLines{Line{NotchSign::right, "right"}, Line{NotchSign::wrong, "wrong"},
                                Line{NotchSign::unanswered, "without an answer"}};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (const Line& line : kLines) {
        const auto count = std::count_if(notches.begin(), notches.end(), [&](const Notch& notch) {
            return notch.sign == line.sign;
        });
        draw_sign(list, style, line.sign, {base.x + style.px(4.0F), base.y}, style.px(12.0F),
                  style.px(4.5F), style.px(4.0F));
        base.x += style.px(16.0F);
        base.x += draw_text(list, style, kCaption, base, fmt::format("{} {}", count, line.words)) +
                  style.px(24.0F);
    }
}

} // namespace steelyard::app
