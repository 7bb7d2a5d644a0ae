#include "app/workshop/lesson_shelf_view.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr float kShelfTop = 56.0F; ///< below the row of places, at 100 %
constexpr float kRow = 74.0F;
constexpr float kNarrow = 560.0F; ///< a shelf below this gives the names all of its width

/// "6 steps, 11 min, yours"; of an opened file its name
std::string facts_of(const ShelvedLesson& one) {
    double time_s = 0.0;
    for (const lesson::LessonStep& step : one.lesson.steps)
        time_s += step.time_s.value_or(0.0);
    std::string facts =
        fmt::format("{} step{}", one.lesson.steps.size(), one.lesson.steps.size() == 1 ? "" : "s");
    if (time_s > 0.0)
        facts += fmt::format(", {:.0f} min", std::ceil(time_s / 60.0));
    switch (one.origin) {
    case LessonOrigin::shipped:
        return facts;
    case LessonOrigin::own:
        return facts + ", yours";
    case LessonOrigin::opened:
        return facts + ", " + one.path.filename().string();
    }
    return facts;
}

void read_keys(const std::vector<KeyPress>& keys, std::size_t count, LessonShelfState& state,
               LessonShelfFrame& frame) {
    for (const KeyPress& key : keys) {
        switch (key.key) {
        case key::kDown:
        case key::kUp:
        case key::kTab: {
            const bool up = key.key == key::kUp || (key.modifiers & key::kWithShift) != 0;
            if (up && state.chosen > 0)
                --state.chosen;
            else if (!up && state.chosen + 1 < count)
                ++state.chosen;
            state.scroll_to_chosen = true;
            break;
        }
        case key::kEnter:
        case key::kKeypadEnter:
            frame.action = LessonWish::start;
            break;
        case key::kE:
            frame.action = LessonWish::edit;
            break;
        case key::kA:
            frame.action = LessonWish::add;
            break;
        case key::kN:
            frame.notes_window = true;
            break;
        default:
            break;
        }
    }
}

/// Actions as words at the right of a line.
void draw_actions(const Style& style, ImVec2 base, LessonShelfFrame& frame) {
    struct Action {
        const char* word;
        LessonWish action;
    };
    float x = base.x;
    for (const Action& one :
         {Action{"Change (E)", LessonWish::edit}, Action{"New lesson (A)", LessonWish::add}}) {
        if (word_button(style, one.word, {x, base.y}, one.word, false))
            frame.action = one.action;
        x += text_width(style, {}, one.word) + style.px(22.0F);
    }
    const char* notes = "Notes window (N)";
    if (x + text_width(style, {}, notes) > ImGui::GetWindowWidth())
        return; // so narrow a screen has no second one beside it
    if (word_button(style, "notes", {x, base.y}, notes, false))
        frame.notes_window = true;
}

/// Begin, at the right of the chosen lesson.
/// @return width that is left for the row [px]
float draw_begin(const Style& style, ImVec2 corner, float width_px, LessonShelfFrame& frame) {
    const float button_px = style.px(112.0F);
    const float row_px = style.px(kRow) - style.px(6.0F);
    const float top = corner.y + 0.5F * (row_px - main_button_height(style));
    if (main_button(style, "begin", {corner.x + width_px - button_px, top}, button_px, "Begin"))
        frame.action = LessonWish::start;
    return width_px - button_px - style.px(16.0F);
}

/// On a narrow shelf: the whole name, and the facts in place of the sentence.
void draw_narrow_row(const Style& style, const ShelvedLesson& one, ImVec2 corner, float width_px) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float left = corner.x + style.px(16.0F);
    const float room_px = width_px - style.px(24.0F);
    const TextStyle name{TextSize::reading, true, Role::ink};
    const TextStyle quiet{TextSize::caption, false, Role::quiet_ink};
    draw_text(list, style, name, {left, corner.y + style.px(30.0F)},
              shortened(style, name, one.lesson.head.name, room_px));
    draw_text(list, style, quiet, {left, corner.y + style.px(53.0F)},
              shortened(style, quiet, facts_of(one), room_px));
}

void draw_row(const Style& style, const ShelvedLesson& one, ImVec2 corner, float width_px) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float left = corner.x + style.px(16.0F);
    const TextStyle quiet{TextSize::caption, false, Role::quiet_ink};
    const std::string facts = facts_of(one);
    const float facts_px = text_width(style, quiet, facts);
    const TextStyle name{TextSize::reading, true, Role::ink};
    draw_text(list, style, name, {left, corner.y + style.px(30.0F)},
              shortened(style, name, one.lesson.head.name, width_px - facts_px - style.px(60.0F)));
    draw_text(list, style, quiet,
              {corner.x + width_px - facts_px - style.px(16.0F), corner.y + style.px(30.0F)},
              facts);
    const TextStyle sentence{TextSize::body, false, Role::quiet_ink};
    draw_text(list, style, sentence, {left, corner.y + style.px(55.0F)},
              shortened(style, sentence, one.lesson.head.description, width_px - style.px(32.0F)));
}

} // namespace

LessonShelfFrame draw_lesson_shelf(const Style& style, const Point& window_px,
                                   const std::vector<KeyPress>& keys, const LessonShelf& shelf,
                                   const std::string& message, LessonShelfState& state) {
    LessonShelfFrame frame;
    const std::size_t count = shelf.lessons.size();
    state.chosen = std::min(state.chosen, count > 0 ? count - 1 : 0);
    read_keys(keys, count, state, frame);
    const auto width_px = std::min(static_cast<float>(window_px.x()) - 48.0F, style.px(1200.0F));
    begin_area("lessons", {0.0, style.px(kShelfTop)},
               {window_px.x(), window_px.y() - style.px(kShelfTop)}, true);
    const float row_px = style.px(kRow);
    const float heading_px = style.px(84.0F);
    if (state.scroll_to_chosen) {
        const float at = heading_px + row_px * static_cast<float>(state.chosen);
        const float seen_px = static_cast<float>(window_px.y()) - style.px(kShelfTop) - row_px;
        if (at < ImGui::GetScrollY() + row_px)
            ImGui::SetScrollY(std::max(0.0F, at - row_px));
        else if (at > ImGui::GetScrollY() + seen_px)
            ImGui::SetScrollY(at - seen_px);
        state.scroll_to_chosen = false;
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    float y = style.px(kShelfTop) - ImGui::GetScrollY();
    draw_text(list, style, {TextSize::key, true, Role::ink}, {24.0F, y + style.px(42.0F)},
              "Workshop");
    draw_actions(style, {24.0F, y + style.px(72.0F)}, frame);
    const bool narrow = width_px < style.px(kNarrow);
    if (narrow && count > 0) // no room beside the chosen one
        draw_begin(style, {24.0F, y + style.px(2.0F)}, width_px, frame);
    y += heading_px + style.px(8.0F);
    for (std::size_t i = 0; i < count; ++i, y += row_px) {
        const ImVec2 corner{24.0F, y};
        const bool chosen = i == state.chosen;
        const float left_px =
            chosen && !narrow ? draw_begin(style, corner, width_px, frame) : width_px;
        ImGui::PushID(static_cast<int>(i));
        if (row_button(style, "lesson", corner, left_px, row_px - style.px(6.0F), chosen)) {
            // The first click chooses, the next one starts.
            if (chosen)
                frame.action = LessonWish::start;
            state.chosen = i;
        }
        ImGui::PopID();
        if (narrow)
            draw_narrow_row(style, shelf.lessons[i], corner, left_px);
        else
            draw_row(style, shelf.lessons[i], corner, left_px);
    }
    y += style.px(24.0F);
    if (!message.empty())
        y = draw_paragraph(list, style, {TextSize::body, false, Role::wrong}, {24.0F, y}, width_px,
                           message);
    for (const std::string& fault : shelf.faults)
        y = draw_paragraph(list, style, {TextSize::body, false, Role::wrong}, {24.0F, y}, width_px,
                           fault);
    ImGui::SetCursorScreenPos({0.0F, y});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
    if (count == 0 && frame.action != LessonWish::add)
        frame.action = LessonWish::none;
    return frame;
}

} // namespace steelyard::app
