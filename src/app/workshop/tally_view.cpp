#include "app/workshop/tally_view.h"

#include "setup/units/format_quantity.h"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace steelyard::app {

namespace {

using lesson::PredictionKind;
using scene::Role;
using scene::TextSize;

constexpr float kBar = 9.0F; ///< at 100 % of a room's scale, as all lengths here
constexpr float kIndent = 20.0F;

// --- answers -------------------------------------------------------------------------------------

class AnswerList {
public:
    AnswerList(const Style& style, const TallyBox& box, const ShowModel& show,
               const ShownStep& shown, const StepWords& words, bool live)
        : style_(style), box_(box), step_(show.lesson->steps[shown.step]), shown_(shown),
          words_(words), row_(show.row), live_(live && !shown.progress.revealed),
          most_(std::max(1, shown.progress.hands.empty()
                                ? 1
                                : *std::max_element(shown.progress.hands.begin(),
                                                    shown.progress.hands.end()))) {}

    std::optional<PressAnswer> draw() {
        std::optional<PressAnswer> pressed;
        float y = box_.top_px;
        ImDrawList& list = *ImGui::GetWindowDrawList();
        for (std::size_t i = 0; i < step_.prediction.choices.size(); ++i) {
            const float top_px = y - style_.px(2.0F);
            list.ChannelsSplit(2); // the ground lies under the words, whose height is known last
            list.ChannelsSetCurrent(1);
            y = draw_one(i, y);
            list.ChannelsSetCurrent(0);
            if (const int by = press_one(i, top_px, y - top_px); by != 0)
                pressed = PressAnswer{i, by};
            list.ChannelsMerge();
            y += style_.px(6.0F);
        }
        return pressed;
    }

private:
    bool is_hands() const { return step_.prediction.kind == PredictionKind::hands; }
    bool is_right(std::size_t index) const {
        return shown_.progress.revealed && words_.right == index;
    }
    bool is_picked(std::size_t index) const {
        return is_hands() ? live_ && row_ == index : shown_.progress.picked == index;
    }

    /// An answer lies on a ground while it can be clicked.
    /// @return +1 for a click, -1 for one of the right button
    int press_one(std::size_t index, float top_px, float height_px) const {
        const float pad_px = style_.px(4.0F);
        const ImVec2 corner{box_.left_px - pad_px, top_px};
        const ImVec2 size{box_.width_px + 2.0F * pad_px, height_px};
        ImGui::PushID(static_cast<int>(index));
        ImGui::SetCursorScreenPos(corner);
        const bool pressed = ImGui::InvisibleButton("answer", size);
        const bool taken_back = ImGui::IsItemClicked(ImGuiMouseButton_Right);
        const bool hovered = ImGui::IsItemHovered();
        ImGui::PopID();
        if (!live_)
            return 0;
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const ImVec2 far_corner{corner.x + size.x, corner.y + size.y};
        list.AddRectFilled(corner, far_corner, style_.mark(Role::panel), 6.0F);
        if (hovered)
            list.AddRect(corner, far_corner, style_.mark(Role::quiet_ink), 6.0F, 0,
                         style_.px(0.6F));
        return pressed ? 1 : taken_back && is_hands() ? -1 : 0;
    }

    float draw_one(std::size_t index, float top_px) const {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const bool faded = shown_.progress.revealed && words_.right && !is_right(index);
        TextStyle how{TextSize::body, is_right(index) || is_picked(index),
                      faded ? Role::quiet_ink : Role::ink};
        const float text_px = box_.left_px + style_.px(kIndent);
        float y = top_px + style_.px(15.0F);
        draw_mark(index, {box_.left_px, y});
        for (const std::string_view line :
             broken_lines(style_, how, step_.prediction.choices[index],
                          box_.width_px - style_.px(kIndent))) {
            draw_text(list, style_, how, {text_px, y}, line);
            y += std::round(1.2F * style_.em_px(TextSize::body));
        }
        y -= style_.px(13.0F);
        return is_hands() ? draw_bar(index, {text_px, y}) : y;
    }

    /// The answer's number; its tick at the reveal; a bar at the left of the one in force.
    void draw_mark(std::size_t index, ImVec2 base) const {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        if (is_right(index)) {
            const float em_px = style_.em_px(TextSize::body);
            const ImVec2 low{base.x + 0.30F * em_px, base.y};
            list.AddLine({base.x, base.y - 0.32F * em_px}, low, style_.mark(Role::right),
                         style_.px(2.4F));
            list.AddLine(low, {base.x + 0.80F * em_px, base.y - 0.78F * em_px},
                         style_.mark(Role::right), style_.px(2.4F));
            return;
        }
        const bool picked = is_picked(index);
        draw_text(list, style_, {TextSize::body, picked, picked ? Role::ink : Role::quiet_ink},
                  base, std::to_string(index + 1));
        if (picked)
            list.AddRectFilled({base.x, base.y + style_.px(4.0F)},
                               {base.x + style_.px(10.0F), base.y + style_.px(6.5F)},
                               style_.mark(Role::ink));
    }

    float draw_bar(std::size_t index, ImVec2 corner) const {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        const int count = shown_.progress.hands[index];
        const TextStyle how{TextSize::body, true, Role::ink};
        const float room_px = box_.width_px - style_.px(kIndent) - style_.px(36.0F);
        const float length_px = room_px * static_cast<float>(count) / static_cast<float>(most_);
        const float below_px = corner.y + style_.px(kBar) + style_.px(9.0F);
        const Role role = is_right(index) ? Role::right : Role::quiet_ink;
        list.AddRectFilled({corner.x, corner.y + style_.px(4.0F)},
                           {corner.x + room_px, corner.y + style_.px(4.0F + kBar)},
                           style_.mark(live_ ? Role::sheet : Role::panel), style_.px(2.0F));
        if (count > 0) {
            list.AddRectFilled({corner.x, corner.y + style_.px(4.0F)},
                               {corner.x + length_px, corner.y + style_.px(4.0F + kBar)},
                               style_.mark(role), style_.px(2.0F));
            draw_text(list, style_, how,
                      {corner.x + room_px + style_.px(5.0F), corner.y + style_.px(14.5F)},
                      std::to_string(count));
        }
        return below_px;
    }

    const Style& style_;
    const TallyBox& box_;
    const lesson::LessonStep& step_;
    const ShownStep& shown_;
    const StepWords& words_;
    std::size_t row_;
    bool live_;
    int most_;
};

// --- numbers -------------------------------------------------------------------------------------

/// A number line that takes in all that was said, and the truth once it is revealed.
struct NumberLine {
    double low = 0.0;
    double high = 1.0;
    float left_px = 0.0F;
    float width_px = 1.0F;

    float at(double value) const {
        return left_px + width_px * static_cast<float>((value - low) / (high - low));
    }
};

NumberLine line_for(std::vector<double> values, const TallyBox& box, float inset_px) {
    NumberLine line;
    line.left_px = box.left_px + inset_px;
    line.width_px = box.width_px - 2.0F * inset_px;
    line.high = 1.0;
    if (!values.empty()) {
        line.low = std::min(0.0, *std::min_element(values.begin(), values.end()));
        line.high = *std::max_element(values.begin(), values.end());
    }
    if (!(line.high > line.low))
        line.high = line.low + 1.0;
    return line;
}

/// The lowest and the highest number as words below the line, apart even when they are near.
void draw_ends(const Style& style, const NumberLine& line, float y, const std::string& low,
               const std::string& high) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const TextStyle how{TextSize::body, false, Role::quiet_ink};
    draw_text(list, style, how, {line.left_px, y}, low);
    if (high != low)
        draw_text(list, style, how,
                  {line.left_px + line.width_px - text_width(style, how, high), y}, high);
}

void draw_dots(const Style& style, const NumberLine& line, float y,
               const std::vector<double>& guesses) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float radius_px = style.px(4.5F);
    std::vector<float> taken;
    for (const double guess : guesses) {
        const float x = line.at(guess);
        // Dots that would lie on one another stand above one another.
        const auto below = std::count_if(taken.begin(), taken.end(), [&](float other) {
            return std::abs(other - x) < 2.0F * radius_px;
        });
        taken.push_back(x);
        list.AddCircleFilled({x, y - static_cast<float>(below) * 2.2F * radius_px}, radius_px,
                             style.mark(Role::quiet_ink), 24);
    }
}

/// Where the truth lies: the notch of the balance strip.
void draw_truth(const Style& style, float x, float y) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float side_px = style.px(6.0F);
    list.AddTriangleFilled({x, y + style.px(2.0F)}, {x + side_px, y + style.px(12.0F)},
                           {x - side_px, y + style.px(12.0F)}, style.mark(Role::right));
    list.AddLine({x, y - style.px(26.0F)}, {x, y + style.px(4.0F)}, style.mark(Role::right),
                 style.px(1.2F));
}

void draw_numbers(const Style& style, const TallyBox& box, const ShowModel& show,
                  const ShownStep& shown, const StepWords& words, bool live) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const bool revealed = shown.progress.revealed;
    const bool typing = live && !show.entry.empty();
    float y = box.top_px + box.large.em_px(TextSize::key);
    if (!revealed) {
        const bool has_unit =
            typing && std::any_of(show.entry.begin(), show.entry.end(), [](char c) {
                return std::isalpha(static_cast<unsigned char>(c)) != 0;
            });
        const std::string unit = has_unit ? "" : asked_unit(show, shown.step);
        const float width_px =
            draw_text(list, box.large, {TextSize::key, true, typing ? Role::ink : Role::quiet_ink},
                      {box.left_px, y}, typing ? show.entry : "?");
        draw_text(list, style, {TextSize::reading, false, Role::quiet_ink},
                  {box.left_px + width_px + style.px(6.0F), y}, unit);
    } else if (typing) {
        // Somebody says a number late: it still counts.
        draw_text(list, style, {TextSize::reading, true, Role::ink},
                  {box.left_px, box.top_px + style.px(12.0F)}, show.entry + " …");
    }
    if (shown.progress.guesses_SI.empty() || !words.sought)
        return;
    std::vector<double> values = shown.progress.guesses_SI;
    if (revealed)
        values.push_back(*words.sought->value_SI);
    const NumberLine line = line_for(values, box, style.px(6.0F));
    y += style.px(revealed ? 10.0F : 66.0F);
    list.AddLine({line.left_px, y}, {line.left_px + line.width_px, y}, style.mark(Role::quiet_ink),
                 style.px(1.0F));
    draw_dots(style, line, y - style.px(6.0F), shown.progress.guesses_SI);
    if (revealed)
        draw_truth(style, line.at(*words.sought->value_SI), y);
    const auto text = [&](double value_SI) {
        return lesson::quantity_text({value_SI, words.sought->dimension, {}}, show.units).joined();
    };
    draw_ends(style, line, y + style.px(28.0F), text(line.low), text(line.high));
}

} // namespace

std::optional<PressAnswer> draw_tally(const Style& style, const TallyBox& box,
                                      const ShowModel& show, const ShownStep& shown,
                                      const StepWords& words, bool live) {
    switch (show.lesson->steps[shown.step].prediction.kind) {
    case PredictionKind::none:
        return std::nullopt;
    case PredictionKind::number:
        draw_numbers(style, box, show, shown, words, live);
        return std::nullopt;
    case PredictionKind::choice:
    case PredictionKind::hands:
        return AnswerList(style, box, show, shown, words, live).draw();
    }
    return std::nullopt;
}

} // namespace steelyard::app
