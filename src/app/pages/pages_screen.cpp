#include "app/pages/pages_screen.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "app/widgets/rail.h"
#include "app/widgets/told_text.h"
#include "app/workshop/room_stage.h"
#include "app/workshop/show_view.h"
#include "words/caution.h"
#include "words/letter_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr double kNudge = 0.02; ///< share of the way that an arrow key moves
constexpr double kFarNudge = 0.1;

void turn_page(PagesModel& model, PagesFrame& frame) {
    frame.read = !turn_on(model);
}

void read_key(const KeyPress& key, PagesModel& model, PagesFrame& frame) {
    const double step = (key.modifiers & key::kWithShift) != 0 ? kFarNudge : kNudge;
    if (key.key == key::kEscape)
        frame.left = true;
    else if (key.key == key::kEnter || key.key == key::kKeypadEnter || key.key == key::kPageDown)
        turn_page(model, frame);
    else if (key.key == key::kPageUp || key.key == key::kBackspace)
        turn_back(model);
    else if (key.key == key::kRight)
        move_to(model, model.now().share + step);
    else if (key.key == key::kLeft)
        move_to(model, model.now().share - step);
    else if (key.key >= key::k1 && key.key <= key::k9)
        guess(model, static_cast<std::size_t>(key.key - key::k1));
}

/// "axis: fulcrum, pivot" as a sentence.
std::string also_called(const std::string& also) {
    const std::size_t colon = also.find(": ");
    if (colon == std::string::npos)
        return "Also called " + also + ".";
    return words::capitalised(also.substr(0, colon)) + " is also called " + also.substr(colon + 2) +
           ".";
}

/// Title, place among the pages and the idea, over the drawing.
/// @return where the drawing may begin [px]
float draw_head(const Style& style, const Layout& layout, const PagesScreen& screen,
                const PageView& view) {
    const PagesModel& model = *screen.model;
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    const float left_px = 24.0F;
    const float width_px = static_cast<float>(layout.stage_px.x()) - 2.0F * left_px;
    float y = style.px(86.0F);
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {left_px, y}, screen.title);
    y += style.px(22.0F);
    draw_text(list, style, kCaption, {left_px, y},
              fmt::format("Page {} of {}", model.page + 1, model.lesson.steps.size()));
    y += style.px(32.0F);
    const TextStyle idea{TextSize::reading, false, Role::ink};
    y = draw_told_on_stage(style, "idea", idea, {left_px, y}, std::min(width_px, style.px(760.0F)),
                           view.prompt);
    if (!model.step().also.empty())
        y = draw_paragraph(list, style, kCaption, {left_px, y - style.px(4.0F)}, width_px,
                           also_called(model.step().also));
    return y - style.px(12.0F);
}

scene::Drawing draw_stage(const Style& style, const Layout& layout, const PagesModel& model,
                          const PageView& view, float top_px) {
    const lesson::LessonStep& step = model.step();
    RoomStage stage;
    stage.type_scale = style.fonts.scale;
    stage.units = model.units;
    stage.top_px = top_px;
    stage.size_px = layout.stage_px;
    stage.without = step.leave_out;
    if (!model.is_open()) {
        stage.strip_later = step.leave_out.count(lesson::StageMark::strip) == 0;
        stage.without.merge(lesson::hidden_marks(step));
    }
    stage.axes = axes_of(step);
    return draw_room_stage(view.solved, model.muscles, stage);
}

/// What stands beside a choice once the page is open.
std::string verdict_beside(const PagesModel& model, const PageView& view, std::size_t choice) {
    if (!model.is_open() || !view.right)
        return {};
    if (choice == *view.right)
        return choice == model.now().guessed ? "as you said" : "so it is";
    return choice == model.now().guessed ? "you said" : "";
}

void draw_choices(const Style& style, const PageView& view, ColumnPen& pen, PagesModel& model) {
    const bool open = model.is_open();
    for (std::size_t i = 0; i < view.choices.size(); ++i) {
        const float room_px = pen.width() - style.px(36.0F);
        const std::string beside = verdict_beside(model, view, i);
        const bool right = open && view.right == i;
        const TextStyle how = right ? kStrong : open ? kQuietBody : kBody;
        const auto lines =
            static_cast<float>(paragraph_lines(style, how, room_px, view.choices[i]));
        const float height_px =
            style.px(beside.empty() ? 14.0F : 32.0F) + lines * line_height(style, TextSize::body);
        ImGui::PushID(static_cast<int>(i));
        if (row_button(style, "choice", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                       height_px, model.now().guessed == i))
            guess(model, i);
        ImGui::PopID();
        const float base = pen.y() + style.px(23.0F);
        draw_text(pen.list(), style, kCaption, {pen.left() + style.px(4.0F), base},
                  std::to_string(i + 1));
        const float next = draw_paragraph(
            pen.list(), style, how, {pen.left() + style.px(36.0F), base}, room_px, view.choices[i]);
        if (!beside.empty())
            draw_text(pen.list(), style,
                      {TextSize::caption, true, right ? Role::right : Role::wrong},
                      {pen.left() + style.px(36.0F), next - style.px(3.0F)}, beside);
        pen.skip_px(height_px + style.px(4.0F));
    }
}

/// The rail, what it moves, and the numbers that follow.
void draw_move(const Style& style, const PageView& view, ColumnPen& pen, PagesModel& model) {
    pen.skip(14.0F);
    pen.paragraph(kCaption, fmt::format("Drag it: {}, {}", view.moved_name, view.moved_value));
    pen.skip(-14.0F);
    if (const auto share = draw_rail(style, "rail", {pen.left(), pen.y()}, pen.width(),
                                     view.moved_name, model.now().share))
        move_to(model, *share);
    pen.skip(kRailHeight + 16.0F);
    for (const PageView::Shown& shown : view.shows) {
        pen.line(kCaption, shown.name);
        const TextStyle number{TextSize::reading, true, Role::ink};
        draw_text(pen.list(), style, number,
                  {pen.left() + pen.width() - text_width(style, number, shown.value), pen.y()},
                  shown.value);
        pen.skip(30.0F);
    }
}

void draw_page_column(const Style& style, const Layout& layout, const PageView& view,
                      PagesScreen& screen, PagesFrame& frame) {
    PagesModel& model = *screen.model;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    if (!view.choices.empty()) {
        pen.paragraph(kCaption, model.is_open() ? "Your guess" : "Your guess first");
        pen.skip(-4.0F);
        draw_choices(style, view, pen, model);
    }
    if (!view.reveal.empty()) {
        pen.skip(22.0F);
        pen.paragraph(kBody, view.reveal);
    }
    if (model.is_open() && model.step().move)
        draw_move(style, view, pen, model);
    if (reads_low_back(model.step()))
        pen.paragraph(kCaption, words::kCaution);
    pen.skip(36.0F);
    if (word_button(style, "leave", {pen.left(), pen.y()}, "Leave these pages", false))
        frame.left = true;
    pen.skip(14.0F);
    const SideAction back{"Back", model.page > 0};
    const char* on = !model.is_open() ? "Guess first"
                     : model.at_end() ? screen.last_word.c_str()
                                      : "Next";
    switch (column_buttons(style, layout, pen, back, on)) {
    case FootPress::none:
        break;
    case FootPress::side:
        turn_back(model);
        break;
    case FootPress::main:
        turn_page(model, frame);
        break;
    }
    end_area();
}

} // namespace

PagesFrame run_pages(const Style& style, const Layout& layout, const FrameInput& input,
                     PagesScreen& screen) {
    PagesFrame frame;
    for (const KeyPress& key : *input.keys)
        read_key(key, *screen.model, frame);
    PageView view;
    view_page(*screen.model, view);
    const float top_px = draw_head(style, layout, screen, view);
    frame.drawing = draw_stage(style, layout, *screen.model, view, top_px);
    draw_page_column(style, layout, view, screen, frame);
    return frame;
}

} // namespace steelyard::app
