#include "app/workshop/draft_view.h"

#include "app/paint/label_painter.h"
#include "app/platform/folders.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/keyboard_wish.h"
#include "app/widgets/press_letters.h"
#include "app/widgets/pressed_key.h"
#include "app/workshop/room_stage.h"
#include "app/workshop/show_view.h"
#include "lesson/lesson_quantity.h"
#include "lesson/lesson_words.h"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using lesson::PredictionKind;
using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr float kTop = 56.0F; ///< below the row of places, at 100 %
constexpr std::size_t kFields = 10;

/// The page's parts [px].
struct DraftLayout {
    float top_px = 0.0F;
    float list_px = 0.0F;   ///< width of the list of steps
    float column_px = 0.0F; ///< left edge of the words
    float width_px = 0.0F;
    float height_px = 0.0F;
};

DraftLayout lay_out_draft(const Style& style, const Point& window_px) {
    DraftLayout page;
    page.width_px = static_cast<float>(window_px.x());
    page.height_px = static_cast<float>(window_px.y());
    page.top_px = style.px(kTop);
    page.list_px =
        std::round(std::clamp(0.22F * page.width_px, style.px(200.0F), style.px(360.0F)));
    page.column_px = page.width_px - std::round(std::clamp(0.34F * page.width_px, style.px(300.0F),
                                                           style.px(560.0F)));
    return page;
}

void read_keys(const std::vector<KeyPress>& keys, const DraftModel& draft, DraftFrame& frame) {
    const std::size_t chosen = draft.state.chosen;
    for (const KeyPress& key : keys) {
        const bool control = (key.modifiers & key::kWithControl) != 0;
        const bool shift = (key.modifiers & key::kWithShift) != 0;
        const bool alt = (key.modifiers & key::kWithAlt) != 0;
        if (key.key == key::kEscape)
            frame.wish = DraftWish::leave;
        else if (key.key == key::kEnter || key.key == key::kKeypadEnter)
            frame.wish = DraftWish::show;
        else if (key.key == key::kL)
            frame.wish = DraftWish::add_lever;
        else if (key.key == key::kX)
            frame.wish = DraftWish::add_exercise;
        else if (key.key == key::kDown && alt)
            frame.intents.emplace_back(MoveStep{1});
        else if (key.key == key::kUp && alt)
            frame.intents.emplace_back(MoveStep{-1});
        else if (key.key == key::kDown)
            frame.intents.emplace_back(ChooseStep{chosen + 1});
        else if (key.key == key::kUp && chosen > 0)
            frame.intents.emplace_back(ChooseStep{chosen - 1});
        else if (key.key == key::kDelete)
            frame.intents.emplace_back(DeleteStep{});
        else if (control && (key.key == key::kY || (shift && key.key == key::kZ)))
            frame.intents.emplace_back(RedoDraft{});
        else if (control && key.key == key::kZ)
            frame.intents.emplace_back(UndoDraft{});
    }
}

// --- the steps -----------------------------------------------------------------------------------

const char* prediction_word(PredictionKind kind) {
    switch (kind) {
    case PredictionKind::none:
        return "only shown";
    case PredictionKind::number:
        return "a number";
    case PredictionKind::choice:
        return "a choice";
    case PredictionKind::hands:
        return "a show of hands";
    }
    return "";
}

/// Words to press, one below another.
class WordColumn {
public:
    WordColumn(const Style& style, float left_px, float y, float width_px)
        : style_(style), left_(left_px), y_(y), width_(width_px) {}

    bool press(const char* word, bool enabled = true) {
        const std::string shown =
            shortened(style_, {TextSize::body, false, Role::quiet_ink}, word, width_);
        const bool pressed = word_button(style_, word, {left_, y_}, shown, false, enabled);
        y_ += style_.px(26.0F);
        return pressed;
    }

private:
    const Style& style_;
    float left_;
    float y_;
    float width_;
};

void draw_steps(const Style& style, const DraftLayout& page, const DraftModel& draft,
                DraftFrame& frame) {
    begin_area("steps", {0.0, page.top_px}, {page.list_px, page.height_px - page.top_px}, true);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto& steps = draft.state.lesson.steps;
    const float row_px = style.px(50.0F);
    const float width_px = page.list_px - 24.0F;
    float y = page.top_px - ImGui::GetScrollY() + style.px(8.0F);
    for (std::size_t i = 0; i < steps.size(); ++i, y += row_px) {
        ImGui::PushID(static_cast<int>(i));
        if (row_button(style, "step", {16.0F, y}, width_px, row_px - style.px(4.0F),
                       i == draft.state.chosen))
            frame.intents.emplace_back(ChooseStep{i});
        ImGui::PopID();
        const TextStyle name{TextSize::body, true, Role::ink};
        const std::string title = steps[i].title.empty() ? steps[i].prompt : steps[i].title;
        draw_text(list, style, name, {28.0F, y + style.px(20.0F)},
                  shortened(style, name, fmt::format("{}  {}", i + 1, title),
                            width_px - style.px(16.0F)));
        draw_text(list, style, {TextSize::caption, false, Role::quiet_ink},
                  {28.0F, y + style.px(38.0F)}, prediction_word(steps[i].prediction.kind));
    }
    const bool any = draft.state.has_step();
    WordColumn words(style, 28.0F, y + style.px(28.0F), page.list_px - 36.0F);
    if (words.press("Add the lever on the bench (L)"))
        frame.wish = DraftWish::add_lever;
    if (words.press("Add the exercise on the body (X)"))
        frame.wish = DraftWish::add_exercise;
    if (words.press("Move up (Alt ↑)", any && draft.state.chosen > 0))
        frame.intents.emplace_back(MoveStep{-1});
    if (words.press("Move down (Alt ↓)", any && draft.state.chosen + 1 < steps.size()))
        frame.intents.emplace_back(MoveStep{1});
    if (words.press("Take out (Delete)", any))
        frame.intents.emplace_back(DeleteStep{});
    if (words.press("Begin at this step (Enter)", any && draft.fault.empty()))
        frame.wish = DraftWish::show;
    if (words.press("Back to the lessons (Escape)"))
        frame.wish = DraftWish::leave;
    ImGui::SetCursorScreenPos({0.0F, y + style.px(220.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
}

// --- the words -----------------------------------------------------------------------------------

/// Fields and words to press, down the column.
class DraftColumn {
public:
    DraftColumn(const Style& style, const DraftLayout& page, const DraftModel& draft,
                DraftViewState& ui, DraftFrame& frame)
        : style_(style), draft_(draft), ui_(ui), outcome_(frame), left_(page.column_px),
          width_(page.width_px - page.column_px - 24.0F),
          y_(page.top_px - ImGui::GetScrollY() + style.px(18.0F)) {}

    float y() const { return y_; }

    void heading(const char* words) {
        draw_text(*ImGui::GetWindowDrawList(), style_, {TextSize::caption, true, Role::quiet_ink},
                  {left_, y_}, words);
        y_ += style_.px(8.0F);
    }

    void field(const char* words, DraftField field, int lines) {
        heading(words);
        const auto index = static_cast<std::size_t>(field);
        std::string& text = ui_.fields[index];
        const bool typing_here = ui_.typed_in == static_cast<int>(index);
        if (!typing_here)
            text = text_of(draft_.state, field);
        const float height_px =
            static_cast<float>(lines) * style_.fonts.height(TextSize::body) + style_.px(14.0F);
        ImGui::SetCursorScreenPos({left_, y_});
        ImGui::PushID(static_cast<int>(index));
        ImGui::SetNextItemWidth(width_);
        if (gives_keyboard(ui_.wants_keyboard == static_cast<int>(index)))
            ui_.wants_keyboard = -1;
        const std::string before = text;
        bool changed = lines > 1 ? ImGui::InputTextMultiline("##text", &text, {width_, height_px})
                                 : ImGui::InputText("##text", &text);
        if (ImGui::IsItemDeactivated() && is_pressed(ImGuiKey_Escape)) {
            text = before; // ImGui's Escape takes back what was typed; ours only leaves
            changed = false;
        }
        if (style_.letters != nullptr && style_.letters->offer(style_))
            ui_.wants_keyboard = static_cast<int>(index);
        if (ImGui::IsItemActivated()) {
            ++ui_.gesture;
            ui_.typed_in = static_cast<int>(index);
        }
        if (ImGui::IsItemDeactivated() && typing_here)
            ui_.typed_in = -1;
        ImGui::PopID();
        if (changed)
            outcome_.intents.emplace_back(SetDraftText{field, text, ui_.gesture});
        if (style_.narration != nullptr)
            style_.narration->add_text(text, {left_ + style_.px(10.0F), y_ + style_.px(20.0F)},
                                       width_, style_.em_px(TextSize::body));
        y_ += height_px + style_.px(20.0F);
        // The field does not break its lines: what is wider than it stands below, whole.
        if (text_width(style_, {TextSize::body}, text) > width_ - style_.px(24.0F) &&
            text.find('\n') == std::string::npos)
            paragraph(Role::quiet_ink, text);
    }

    /// A word in a row of words that goes on in the next line.
    bool word(const char* words, bool in_force) {
        const float width_px = text_width(style_, {TextSize::body, in_force}, words);
        if (x_ > 0.0F && x_ + width_px > width_) {
            x_ = 0.0F;
            y_ += style_.px(28.0F);
        }
        const bool pressed =
            word_button(style_, words, {left_ + x_, y_ + style_.px(14.0F)}, words, in_force);
        x_ += width_px + style_.px(18.0F);
        return pressed;
    }

    void end_words() {
        x_ = 0.0F;
        y_ += style_.px(50.0F);
    }

    void paragraph(Role role, const std::string& text) {
        y_ = draw_paragraph(*ImGui::GetWindowDrawList(), style_, {TextSize::caption, false, role},
                            {left_, y_}, width_, text) +
             style_.px(6.0F);
    }

private:
    const Style& style_;
    const DraftModel& draft_;
    DraftViewState& ui_;
    DraftFrame& outcome_;
    float left_;
    float width_;
    float y_;
    float x_ = 0.0F;
};

void draw_prediction(const lesson::LessonStep& step, DraftColumn& column, DraftFrame& frame) {
    column.heading("What the room is asked for");
    ImGui::PushID("kind");
    for (const PredictionKind kind : {PredictionKind::none, PredictionKind::number,
                                      PredictionKind::choice, PredictionKind::hands})
        if (column.word(prediction_word(kind), step.prediction.kind == kind))
            frame.intents.emplace_back(SetPrediction{kind});
    ImGui::PopID();
    column.end_words();
    if (step.prediction.kind == PredictionKind::choice ||
        step.prediction.kind == PredictionKind::hands) {
        column.field("Answers to choose from, a line each", DraftField::choices, 4);
        column.field("The right one: its words, or {effort compared}", DraftField::answer, 1);
    }
    column.heading("The number that stands large at the reveal");
    ImGui::PushID("sought");
    const bool lever = std::holds_alternative<setup::LeverSetup>(step.stage.setup);
    for (const std::string_view name : lesson::quantity_names(lever))
        if (column.word(std::string(name).c_str(), step.key == name))
            frame.intents.emplace_back(SetSought{std::string(name)});
    ImGui::PopID();
    column.end_words();
}

void draw_hidden(const lesson::LessonStep& step, DraftColumn& column, DraftFrame& frame) {
    column.heading("Hidden until the reveal");
    const lesson::StageMarks hidden = lesson::hidden_marks(step);
    ImGui::PushID("hidden");
    const std::vector<std::string_view> names = lesson::mark_names();
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto mark = static_cast<lesson::StageMark>(i);
        if (column.word(std::string(names[i]).c_str(), hidden.count(mark) != 0))
            frame.intents.emplace_back(TurnHidden{mark});
    }
    ImGui::PopID();
    column.end_words();
}

void draw_words(const Style& style, const DraftLayout& page, const DraftModel& draft,
                DraftViewState& ui, DraftFrame& frame) {
    begin_area("words", {page.column_px - 8.0, page.top_px},
               {page.width_px - page.column_px + 8.0, page.height_px - page.top_px}, true);
    DraftColumn column(style, page, draft, ui, frame);
    if (!draft.fault.empty())
        column.paragraph(Role::wrong, draft.fault);
    column.field("Name of the lesson", DraftField::name, 1);
    column.field("One sentence about it", DraftField::description, 1);
    if (draft.state.has_step()) {
        const lesson::LessonStep& step = draft.state.step();
        column.field("Title of this step", DraftField::title, 1);
        column.field("Sentence to the room", DraftField::prompt, 2);
        draw_prediction(step, column, frame);
        draw_hidden(step, column, frame);
        column.field("Sentence at the reveal; quantities in braces: {effort}", DraftField::reveal,
                     2);
        column.field("Your note", DraftField::note, 3);
    } else {
        column.paragraph(Role::quiet_ink,
                         "A lesson is a row of steps. Put something on the bench or on the body, "
                         "come back and add it.");
    }
    column.paragraph(Role::quiet_ink, "Kept as you go, in " + where_kept(draft.path));
    ImGui::SetCursorScreenPos({page.column_px, column.y() + style.px(16.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
}

// --- the stage -----------------------------------------------------------------------------------

void draw_stage(const Style& style, const DraftLayout& page, const DraftModel& draft,
                const std::vector<mechanics::Muscle>& muscles, setup::UnitSystem units,
                DraftFrame& frame) {
    if (!draft.state.has_step())
        return;
    const auto solved = lesson::solve_stage(draft.state.step().stage);
    if (!solved)
        return;
    RoomStage room;
    room.units = units;
    room.type_scale = style.fonts.scale;
    room.top_px = style.px(8.0F);
    room.size_px = {page.column_px - page.list_px - 32.0, page.height_px - page.top_px - 24.0};
    room.without = lesson::hidden_marks(draft.state.step());
    room.axes = axes_of(draft.state.step());
    if (room.size_px.x() < 160.0)
        return; // too narrow: the words are what counts
    frame.stage = draw_room_stage(*solved, muscles, room);
    frame.stage_at_px = {page.list_px + 8.0, page.top_px};
    paint_labels(frame.stage, frame.stage_at_px, style, *ImGui::GetBackgroundDrawList());
}

} // namespace

DraftFrame draw_draft(const Style& style, const Point& window_px, const std::vector<KeyPress>& keys,
                      const DraftModel& draft, const std::vector<mechanics::Muscle>& muscles,
                      setup::UnitSystem units, DraftViewState& ui) {
    DraftFrame frame;
    ui.fields.resize(kFields);
    const DraftLayout page = lay_out_draft(style, window_px);
    read_keys(keys, draft, frame);
    draw_steps(style, page, draft, frame);
    draw_words(style, page, draft, ui, frame);
    draw_stage(style, page, draft, muscles, units, frame);
    return frame;
}

} // namespace steelyard::app
