#include "app/workshop/show_view.h"

#include "app/widgets/area.h"
#include "app/widgets/told_text.h"
#include "app/workshop/room_foot.h"
#include "app/workshop/room_stage.h"
#include "app/workshop/tally_view.h"
#include "setup/body/body_names.h"
#include "words/body/axis_shares.h"
#include "words/body/body_words.h"
#include "words/caution.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using lesson::PredictionKind;
using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr float kMargin = 15.0F; ///< at 100 % of a room's scale, as all lengths below
constexpr float kFirstBaseline = 34.0F;
constexpr std::size_t kMostLargeLines = 2; ///< a longer sentence is set smaller

/// Where the parts of the screen stand [px].
struct RoomLayout {
    float width_px = 0.0F;
    float height_px = 0.0F; ///< down to the note, if it is shown
    float margin_px = 0.0F;
    float column_px = 0.0F; ///< left edge of the column; the window's width where there is none
};

bool has_column(const lesson::LessonStep& step) {
    return step.prediction.kind != PredictionKind::none || !step.key.empty();
}

RoomLayout lay_out_room(const Style& style, const Point& window_px, const lesson::LessonStep& step,
                        bool note_below) {
    RoomLayout room;
    room.width_px = static_cast<float>(window_px.x());
    room.height_px = static_cast<float>(window_px.y()) * (note_below ? 0.74F : 1.0F);
    room.margin_px = style.px(kMargin);
    room.column_px = has_column(step) ? std::round(0.655F * room.width_px) : room.width_px;
    return room;
}

/// How the one sentence is set: large where two lines hold it.
struct Sentence {
    TextStyle how{TextSize::reading, true, Role::ink};
    std::vector<std::string_view> lines;
    float step_px = 0.0F;
};

Sentence set_sentence(const Style& style, const RoomLayout& room, const std::string& text) {
    Sentence sentence;
    const float width_px = room.width_px - 2.0F * room.margin_px;
    sentence.lines = broken_lines(style, sentence.how, text, width_px);
    if (sentence.lines.size() > kMostLargeLines) {
        sentence.how.size = TextSize::body;
        sentence.lines = broken_lines(style, sentence.how, text, width_px);
    }
    sentence.step_px = std::round(1.25F * style.em_px(sentence.how.size));
    return sentence;
}

/// @return where the stage may begin [px], the same before and after the reveal
float draw_sentence(const Style& style, const RoomLayout& room, const StepWords& words,
                    bool revealed) {
    const Sentence prompt = set_sentence(style, room, words.prompt);
    const Sentence reveal = set_sentence(style, room, words.reveal);
    const Sentence& shown = revealed ? reveal : prompt;
    float y = style.px(kFirstBaseline);
    const float width_px = room.width_px - room.margin_px; // a line was broken to less already
    for (std::size_t i = 0; i < shown.lines.size(); ++i, y += shown.step_px)
        draw_told(*ImGui::GetWindowDrawList(), style, ("line" + std::to_string(i)).c_str(),
                  shown.how, {room.margin_px, y}, width_px, shown.lines[i]);
    float room_px = 0.0F;
    for (const Sentence* one : {&prompt, &reveal})
        room_px = std::max(room_px, (static_cast<float>(one->lines.size()) - 0.4F) * one->step_px);
    return style.px(kFirstBaseline) + room_px;
}

/// A style whose key size is the one for a room.
Style key_style(const Style& style) {
    Style larger = style;
    larger.fonts.scale *=
        static_cast<float>(kKeyType_px / scene::text_height_px(TextSize::key) /
                           (kSmallestType_px / scene::text_height_px(TextSize::body)));
    return larger;
}

/// The number that matters, at the foot of the column, with its name above it.
void draw_key(const Style& style, const RoomLayout& room, const StepWords& words) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float width_px = room.width_px - room.margin_px - room.column_px;
    const TextStyle number{TextSize::key, true, Role::ink};
    const TextStyle unit{TextSize::reading, false, Role::quiet_ink};
    const float gap_px = words.key->unit.empty() ? 0.0F : style.px(6.0F);
    Style large = key_style(style);
    const auto taken_px = [&] {
        return text_width(large, number, words.key->number) + gap_px +
               text_width(style, unit, words.key->unit);
    };
    // A word such as "second class" may be longer than the column.
    while (taken_px() > width_px && large.em_px(TextSize::key) > style.em_px(TextSize::reading))
        large.fonts.scale *= 0.94F;
    const float base = room.height_px - style.px(kRoomFoot + 8.0F);
    const float number_px =
        draw_text(list, large, number, {room.column_px, base}, words.key->number);
    draw_text(list, style, unit, {room.column_px + number_px + gap_px, base}, words.key->unit);
    draw_text(list, style, {TextSize::body, false, Role::quiet_ink},
              {room.column_px, base - large.em_px(TextSize::key)}, words.key_name);
}

void draw_note(const Style& style, const RoomLayout& room, const Point& window_px,
               const lesson::LessonStep& step) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({0.0F, room.height_px}, {room.width_px, static_cast<float>(window_px.y())},
                       style.mark(Role::panel));
    draw_paragraph(list, style, {TextSize::body, false, Role::ink},
                   {room.margin_px, room.height_px + style.px(24.0F)},
                   room.width_px - 2.0F * room.margin_px,
                   step.note.empty() ? "No note for this step." : step.note);
}

/// A click anywhere shows the lesson again.
void draw_blank(const Point& window_px, ShowFrame& frame) {
    const ImVec2 size{static_cast<float>(window_px.x()), static_cast<float>(window_px.y())};
    ImGui::GetWindowDrawList()->AddRectFilled({0.0F, 0.0F}, size, IM_COL32_BLACK);
    ImGui::SetCursorScreenPos({0.0F, 0.0F});
    if (ImGui::InvisibleButton("blank", size))
        frame.intents.emplace_back(TurnBlank{});
}

scene::Drawing draw_stage(const Style& style, const RoomLayout& room, const ShowModel& show,
                          const ShownStep& shown, float top_px) {
    const lesson::LessonStep& step = show.lesson->steps[shown.step];
    RoomStage stage;
    stage.type_scale = style.fonts.scale;
    stage.units = show.units;
    stage.top_px = top_px;
    stage.size_px = {room.column_px - (has_column(step) ? room.margin_px : 0.0F),
                     room.height_px - style.px(kRoomFoot)};
    stage.without = step.leave_out;
    if (!shown.progress.revealed) {
        stage.strip_later = step.leave_out.count(lesson::StageMark::strip) == 0;
        stage.without.merge(lesson::hidden_marks(step));
    }
    stage.axes = axes_of(step);
    return draw_room_stage(show.solved[shown.step], *show.muscles, stage);
}

/// True when the words of a step name a hinge, or the answers its joint.
bool is_about(const lesson::LessonStep& step, mechanics::Hinge hinge) {
    const std::string words = step.prompt + step.reveal + step.key + step.prediction.answer;
    const std::string_view name = mechanics::hinge_info(hinge).name;
    const auto& choices = step.prediction.choices;
    const auto is_choice = [&](const std::string& word) {
        return std::find(choices.begin(), choices.end(), word) != choices.end();
    };
    return words.find(setup::without_side(name)) != std::string::npos ||
           is_choice(words::joint_word(hinge)) || is_choice(words::both_sides_word(hinge));
}

} // namespace

std::vector<mechanics::Hinge> axes_of(const lesson::LessonStep& step) {
    const auto* body = std::get_if<setup::BodySetup>(&step.stage.setup);
    if (body == nullptr)
        return {};
    std::vector<mechanics::Hinge> axes;
    for (std::size_t i = 0; i < body->axes.size(); ++i)
        if (is_about(step, body->axes[i]))
            axes.push_back(body->axes[i]);
    const mechanics::Hinge chosen = body->axes[step.stage.axis];
    const bool named = std::find(axes.begin(), axes.end(), chosen) != axes.end();
    // The axis that is looked at, unless the words are about others.
    if (!named && (axes.empty() || !step.axis.empty()))
        axes.insert(axes.begin(), chosen);
    return axes;
}

bool reads_low_back(const lesson::LessonStep& step) {
    const std::vector<mechanics::Hinge> axes = axes_of(step);
    return std::any_of(axes.begin(), axes.end(), [](mechanics::Hinge hinge) {
        return mechanics::hinge_info(hinge).joint == mechanics::Joint::lumbar;
    });
}

ShowFrame draw_show(const Style& style, const Point& window_px, const ShowModel& show,
                    bool note_below) {
    ShowFrame frame;
    begin_area("room", Point::Zero(), window_px);
    if (show.blank) {
        draw_blank(window_px, frame);
        end_area();
        return frame;
    }
    const ShownStep shown = show.shown();
    const lesson::LessonStep& step = show.lesson->steps[shown.step];
    const StepWords words = words_of(show, shown.step);
    const RoomLayout room = lay_out_room(style, window_px, step, note_below);
    const bool revealed = shown.progress.revealed && !words.reveal.empty();
    const float top_px = draw_sentence(style, room, words, revealed);
    frame.drawing = draw_stage(style, room, show, shown, top_px);
    if (has_column(step)) {
        const TallyBox box{room.column_px, top_px + style.px(16.0F),
                           room.width_px - room.margin_px - room.column_px, key_style(style)};
        if (const auto pressed = draw_tally(style, box, show, shown, words, !show.frozen))
            frame.intents.emplace_back(*pressed);
        if (shown.progress.revealed && words.key)
            draw_key(style, room, words);
    }
    const FootWishes foot =
        draw_room_foot(style, {room.margin_px, room.width_px - room.margin_px, room.height_px},
                       show, shown.step, reads_low_back(step) ? words::kCaution : nullptr);
    if (foot.intent)
        frame.intents.push_back(*foot.intent);
    frame.leave = foot.leave;
    if (note_below)
        draw_note(style, room, window_px, show.lesson_step());
    end_area();
    return frame;
}

} // namespace steelyard::app
