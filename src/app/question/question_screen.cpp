#include "app/question/question_screen.h"

#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "publish/question_drawing.h"

#include <GLFW/glfw3.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using problems::Kind;
using problems::Question;
using scene::Role;
using scene::TextSize;

constexpr TextStyle kCaption{TextSize::caption, false, Role::quiet_ink};
constexpr TextStyle kBody{TextSize::body, false, Role::ink};
constexpr TextStyle kStrong{TextSize::body, true, Role::ink};

bool is_typed(const Question& question) {
    return question.kind == Kind::numeric || question.kind == Kind::place;
}

const char* how_to_answer(Kind kind) {
    switch (kind) {
    case Kind::numeric:
        return "Type a number; any unit of the right kind will do.";
    case Kind::single_choice:
    case Kind::change:
        return "Choose one.";
    case Kind::several_choices:
        return "Choose every one that fits.";
    case Kind::ordering:
        return "Choose them in order.";
    case Kind::place:
        return "Type the letter of the place.";
    }
    return "";
}

void draw_answer_line(const Style& style, QuestionScreen& screen, ColumnPen& pen, bool& entered) {
    QuestionModel& model = *screen.model;
    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    const float unit_px = text_width(style, kBody, model.question.unit);
    ImGui::SetNextItemWidth(pen.width() - (unit_px > 0.0F ? unit_px + style.px(12.0F) : 0.0F));
    if (screen.wants_keyboard) {
        ImGui::SetKeyboardFocusHere();
        screen.wants_keyboard = false;
    }
    const std::string before = model.typed;
    if (ImGui::InputText("##answer", &model.typed, ImGuiInputTextFlags_EnterReturnsTrue)) {
        entered = true;
        screen.wants_keyboard = !model.finished; // a second try needs no click
    }
    if (model.typed != before && !model.finished)
        model.mark.reset();
    draw_text(pen.list(), style, kBody,
              {pen.left() + pen.width() - unit_px, pen.y() + style.px(23.0F)}, model.question.unit);
    pen.skip(44.0F);
}

void draw_choices(const Style& style, QuestionModel& model, ColumnPen& pen) {
    for (std::size_t i = 0; i < model.question.choices.size(); ++i) {
        const problems::Choice& choice = model.question.choices[i];
        const auto place = std::find(model.chosen.begin(), model.chosen.end(), i);
        const bool chosen = place != model.chosen.end();
        ImGui::PushID(static_cast<int>(i));
        if (row_button(style, "choice", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                       style.px(36.0F), chosen))
            choose(model, i);
        ImGui::PopID();
        std::string number = std::to_string(i + 1);
        if (model.question.kind == Kind::ordering && chosen)
            number = "→ " + std::to_string(place - model.chosen.begin() + 1);
        const float base = pen.y() + style.px(23.0F);
        draw_text(pen.list(), style, kCaption, {pen.left() + style.px(4.0F), base}, number);
        draw_text(pen.list(), style, chosen ? kStrong : kBody, {pen.left() + style.px(36.0F), base},
                  choice.text);
        pen.skip(40.0F);
    }
}

/// A tick or a cross, so that colour is not the only signal.
void draw_verdict_sign(const Style& style, ColumnPen& pen, bool right) {
    const ImU32 ink = style.mark(right ? Role::right : Role::wrong);
    const float size = style.px(12.0F);
    const ImVec2 at{pen.left() + style.px(2.0F), pen.y() - size};
    if (right) {
        const ImVec2 tick[] = {
            {at.x, at.y + 0.55F * size}, {at.x + 0.4F * size, at.y + size}, {at.x + size, at.y}};
        pen.list().AddPolyline(tick, 3, ink, 0, style.px(3.0F));
    } else {
        pen.list().AddLine(at, {at.x + size, at.y + size}, ink, style.px(3.0F));
        pen.list().AddLine({at.x + size, at.y}, {at.x, at.y + size}, ink, style.px(3.0F));
    }
}

std::string verdict_word(const problems::Marking& mark) {
    switch (mark.verdict) {
    case problems::Verdict::correct:
        return "Right";
    case problems::Verdict::correct_few_figures:
        return "Right, with few figures";
    case problems::Verdict::wrong:
        return "Not yet";
    case problems::Verdict::wrong_unit:
        return "Look at the unit";
    case problems::Verdict::wrong_dimension:
        return "Another kind of quantity";
    case problems::Verdict::unreadable:
        return "That could not be read";
    }
    return {};
}

void draw_mark(const Style& style, const QuestionModel& model, ColumnPen& pen) {
    if (!model.mark)
        return;
    pen.skip(24.0F);
    draw_verdict_sign(style, pen, model.mark->correct);
    draw_text(pen.list(), style,
              {TextSize::body, true, model.mark->correct ? Role::right : Role::wrong},
              {pen.left() + style.px(24.0F), pen.y()}, verdict_word(*model.mark));
    pen.skip(24.0F);
    pen.paragraph(kBody, model.mark->feedback);
    if (!model.mark->follow_up.empty())
        pen.paragraph(kCaption, model.mark->follow_up);
}

void draw_steps(const QuestionModel& model, ColumnPen& pen) {
    const std::vector<problems::Step>& steps = model.question.steps;
    for (std::size_t i = 0; i < std::min(model.steps_shown, steps.size()); ++i) {
        pen.skip(i == 0 ? 18.0F : 6.0F);
        const bool parts_here = model.mark && !model.mark->correct && model.mark->parts_at == i;
        pen.paragraph({TextSize::caption, true, parts_here ? Role::wrong : Role::ink},
                      std::to_string(i + 1) + "  " + steps[i].says);
        pen.paragraph(kCaption, steps[i].formula.empty() ? steps[i].result : steps[i].formula);
    }
    if (model.finished) {
        pen.skip(12.0F);
        pen.paragraph(kStrong, "Answer: " + model.question.answer_text);
        if (!model.question.reason.empty())
            pen.paragraph(kCaption, model.question.reason);
    }
}

std::string hint_word(const QuestionModel& model) {
    if (model.finished || model.question.steps.empty())
        return {};
    return model.steps_shown == 0 ? "Show me the first step" : "Show me the next step";
}

QuestionWish draw_question_column(const Style& style, const Layout& layout,
                                  const problems::Bank& bank, bool check_now,
                                  QuestionScreen& screen) {
    QuestionModel& model = *screen.model;
    QuestionWish wish = QuestionWish::none;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    const problems::Skill* skill = bank.find_skill(model.question.skill);
    pen.paragraph(kCaption, skill != nullptr ? skill->title : model.question.skill);
    pen.skip(10.0F);
    pen.paragraph(kBody, model.question.prompt);
    pen.skip(4.0F);
    pen.paragraph(kCaption, how_to_answer(model.question.kind));
    pen.skip(-4.0F);
    if (is_typed(model.question))
        draw_answer_line(style, screen, pen, check_now);
    else
        draw_choices(style, model, pen);
    if (check_now)
        mark_answer(bank, model);
    draw_mark(style, model, pen);
    draw_steps(model, pen);
    pen.skip(30.0F);
    const std::string hint = hint_word(model);
    if (!hint.empty() && word_button(style, "hint", {pen.left(), pen.y()}, hint, false))
        show_next_step(model);
    pen.skip(hint.empty() ? 0.0F : 28.0F);
    if (word_button(style, "leave", {pen.left(), pen.y()}, "Back to the bench", false))
        wish = QuestionWish::leave;
    pen.skip(26.0F);
    draw_text(pen.list(), style, kCaption, {pen.left(), pen.y()}, "code " + model.question.code);
    pen.skip(14.0F);
    const auto foot = static_cast<float>(layout.column_at_px.y() + layout.column_px.y()) -
                      main_button_height(style) - style.px(28.0F);
    const float top = layout.narrow ? pen.y() : std::max(pen.y(), foot);
    if (main_button(style, "main", {pen.left(), top}, pen.width(),
                    model.finished ? "Next question" : "Check")) {
        if (model.finished)
            wish = QuestionWish::next_question;
        else
            mark_answer(bank, model);
    }
    pen.finish(top - pen.y() + main_button_height(style) + style.px(20.0F));
    end_area();
    return wish;
}

scene::Drawing draw_question_stage(const Style& style, const Layout& layout,
                                   const QuestionModel& model) {
    publish::QuestionDrawing how;
    how.size_px = layout.stage_px;
    how.text_scale = style.fonts.scale;
    how.top_px = 64.0 * style.fonts.scale;
    how.answered = model.finished;
    if (model.mark && !model.mark->correct) {
        how.wrong = model.mark->drawn_wrong;
        how.right = model.mark->drawn_right;
    }
    return publish::question_drawing(model.question, how);
}

} // namespace

QuestionOutcome run_question(const Style& style, const Layout& layout, const problems::Bank& bank,
                             const std::vector<KeyPress>& keys, QuestionScreen& screen) {
    QuestionOutcome outcome;
    bool check_now = false;
    for (const KeyPress& key : keys) {
        if (key.key == GLFW_KEY_ESCAPE)
            outcome.wish = QuestionWish::leave;
        else if (key.key >= GLFW_KEY_1 && key.key <= GLFW_KEY_9)
            choose(*screen.model, static_cast<std::size_t>(key.key - GLFW_KEY_1));
        else if (key.key == GLFW_KEY_ENTER || key.key == GLFW_KEY_KP_ENTER) {
            if (screen.model->finished)
                outcome.wish = QuestionWish::next_question;
            else
                check_now = true;
        } else if (key.key == GLFW_KEY_RIGHT)
            show_next_step(*screen.model);
    }
    const QuestionWish wish = draw_question_column(style, layout, bank, check_now, screen);
    if (wish != QuestionWish::none)
        outcome.wish = wish;
    outcome.drawing = draw_question_stage(style, layout, *screen.model);
    return outcome;
}

} // namespace steelyard::app
