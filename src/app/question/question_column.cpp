#include "app/look/text_styles.h"
#include "app/platform/wishes.h"
#include "app/question/question_screen.h"
#include "app/widgets/buttons.h"
#include "app/widgets/keyboard_wish.h"
#include "app/widgets/pressed_key.h"
#include "app/widgets/told_text.h"
#include "problems/bank/answer_kinds.h"
#include "problems/question/question_writer.h"
#include "problems/question/worked_steps.h"

#include <imgui_stdlib.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using problems::Question;
using scene::Role;
using scene::TextSize;

std::string_view how_to_answer(const Question& question) {
    if (is_placed(question))
        return problems::how_to_place(problems::gesture_of(question));
    return problems::row_of(question).in_window;
}

/// A sentence to go on after a colon.
std::string lowered(std::string_view sentence) {
    std::string text(sentence);
    if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z')
        text.front() = static_cast<char>(text.front() - 'A' + 'a');
    return text;
}

/// How the keys do what the hand does on the drawing.
const char* how_by_keys(problems::Gesture gesture) {
    switch (gesture) {
    case problems::Gesture::point_on_lever:
        return "By keys: left and right move it, with Shift farther.";
    case problems::Gesture::line:
        return "By keys: arrows move one end, with Ctrl the other, with Shift farther.";
    case problems::Gesture::arm:
        return "By keys: arrows move its end, with Shift farther.";
    }
    return "";
}

/// A line of text over the column's width with a unit at its end.
/// @return true when Enter was pressed in it
bool draw_text_line(const Style& style, ColumnPen& pen, const char* id, const std::string& unit,
                    std::string& text) {
    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    const float unit_px = text_width(style, kBody, unit);
    ImGui::SetNextItemWidth(pen.width() - (unit_px > 0.0F ? unit_px + style.px(12.0F) : 0.0F));
    const bool entered = ImGui::InputText(id, &text, ImGuiInputTextFlags_EnterReturnsTrue);
    draw_text(pen.list(), style, kBody,
              {pen.left() + pen.width() - unit_px, pen.y() + style.px(23.0F)}, unit);
    pen.skip(44.0F);
    return entered;
}

void obey(learner::Aside aside, QuestionScreen& screen, QuestionFrame& frame) {
    switch (aside) {
    case learner::Aside::hint:
        return give_hint(screen.model->asking);
    case learner::Aside::give_up:
        return give_up(screen.model->asking);
    case learner::Aside::skip:
        frame.wish = QuestionWish::skip;
        return;
    }
}

/// What the terminal's letters do there do the same here, so that hands stay on the keys.
bool obey_typed_letter(QuestionScreen& screen, QuestionFrame& frame) {
    const auto aside = aside_of(screen.model->asking, screen.model->typed);
    if (!aside)
        return false;
    obey(*aside, screen, frame);
    screen.model->typed.clear();
    return true;
}

void draw_answer_line(const Style& style, QuestionScreen& screen, ColumnPen& pen,
                      QuestionFrame& frame) {
    QuestionModel& model = *screen.model;
    if (gives_keyboard(screen.wants_keyboard))
        screen.wants_keyboard = false;
    const std::string before = model.typed;
    const problems::NumberWanted* number = problems::wanted_number(model.question());
    const std::string unit = number != nullptr ? number->unit : std::string();
    if (draw_text_line(style, pen, "##answer", unit, model.typed)) {
        frame.entered = !obey_typed_letter(screen, frame);
        screen.wants_keyboard = !model.asking.finished; // a second try needs no click
    } else if (ImGui::IsItemActive() && number != nullptr) {
        ask_for_digits();
    } else if (ImGui::IsItemDeactivated() && is_pressed(ImGuiKey_Escape)) {
        model.typed = before; // ImGui's Escape takes back what was typed; ours only leaves
        frame.wish = QuestionWish::leave;
    }
    if (model.typed != before && !model.asking.finished)
        change_answer(model.asking);
}

/// A tick or a cross, so that colour is not the only signal; its upper left corner.
void draw_sign(const Style& style, ImDrawList& list, ImVec2 at, bool right) {
    const ImU32 ink = style.mark(right ? Role::right : Role::wrong);
    const float size = style.px(12.0F);
    if (right) {
        const ImVec2 tick[] = {
            {at.x, at.y + 0.55F * size}, {at.x + 0.4F * size, at.y + size}, {at.x + size, at.y}};
        list.AddPolyline(tick, 3, ink, 0, style.px(3.0F));
    } else {
        list.AddLine(at, {at.x + size, at.y + size}, ink, style.px(3.0F));
        list.AddLine({at.x + size, at.y}, {at.x, at.y + size}, ink, style.px(3.0F));
    }
}

/// Whether a row was right to choose; of an order, whether it stands in its place. Nothing while
/// the question is open, and of rows that nobody had to choose.
std::optional<bool> row_mark(const QuestionModel& model, std::size_t row) {
    if (!model.asking.finished || !model.asking.rules.feedback || !model.asking.rules.explains)
        return std::nullopt;
    const std::vector<std::size_t> right = problems::right_ones(model.question());
    const auto wanted = std::find(right.begin(), right.end(), row);
    const auto chosen = std::find(model.chosen.begin(), model.chosen.end(), row);
    if (std::holds_alternative<problems::OrderWanted>(model.question().wanted))
        return chosen == model.chosen.end()
                   ? std::nullopt
                   : std::optional(chosen - model.chosen.begin() == wanted - right.begin());
    if (wanted != right.end())
        return true;
    return chosen != model.chosen.end() ? std::optional(false) : std::nullopt;
}

/// Beside the words of a choice: its letter in front, the tick or cross behind.
constexpr float kRowMargins_px = 56.0F;

/// Height of a choice whose words take several lines.
float choice_height(const Style& style, ColumnPen& pen, const std::string& text) {
    const float room_px = pen.width() - style.px(kRowMargins_px);
    const float lines = static_cast<float>(paragraph_lines(style, kStrong, room_px, text));
    return style.px(14.0F) + lines * line_height(style, TextSize::body);
}

void draw_choices(const Style& style, QuestionModel& model, ColumnPen& pen, QuestionFrame& frame) {
    const std::vector<problems::Choice>& choices = problems::choices_of(model.question());
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const problems::Choice& choice = choices[i];
        const auto place = std::find(model.chosen.begin(), model.chosen.end(), i);
        const bool chosen = place != model.chosen.end();
        ImGui::PushID(static_cast<int>(i));
        const float height_px = choice_height(style, pen, choice.text);
        if (row_button(style, "choice", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                       height_px, chosen)) {
            choose(model, i);
            frame.let_go = true;
        }
        ImGui::PopID();
        std::string name = problems::letter(i);
        if (chosen && std::holds_alternative<problems::OrderWanted>(model.question().wanted))
            name += " → " + std::to_string(place - model.chosen.begin() + 1);
        const float base = pen.y() + style.px(23.0F);
        draw_text(pen.list(), style, kCaption, {pen.left() + style.px(4.0F), base}, name);
        if (const auto right = row_mark(model, i))
            draw_sign(style, pen.list(),
                      {pen.left() + pen.width() - style.px(14.0F), base - style.px(12.0F)}, *right);
        draw_paragraph(pen.list(), style, chosen ? kStrong : kBody,
                       {pen.left() + style.px(36.0F), base}, pen.width() - style.px(kRowMargins_px),
                       choice.text);
        pen.skip_px(height_px + style.px(4.0F));
    }
}

std::string verdict_word(const problems::Marking& mark) {
    switch (mark.verdict) {
    case problems::Verdict::correct:
        return "Right";
    case problems::Verdict::correct_few_figures:
        return "Right, with fewer figures";
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

void draw_verdict(const Style& style, const problems::Marking& mark, ColumnPen& pen) {
    pen.skip(24.0F);
    draw_sign(style, pen.list(), {pen.left() + style.px(2.0F), pen.y() - style.px(12.0F)},
              mark.correct);
    draw_text(pen.list(), style, {TextSize::body, true, mark.correct ? Role::right : Role::wrong},
              {pen.left() + style.px(24.0F), pen.y()}, verdict_word(mark));
    pen.skip(24.0F);
    pen.told(kBody, mark.feedback); // a step of the working may stand in it
    if (!mark.follow_up.empty())
        pen.paragraph(kCaption, mark.follow_up);
}

void draw_step(const learner::Asking& asking, std::size_t index, bool whole, ColumnPen& pen) {
    const problems::Step& step = asking.question.steps[index];
    const bool parts_here = asking.told && !asking.told->correct && asking.told->parts_at == index;
    pen.told({TextSize::caption, true, parts_here ? Role::wrong : Role::ink},
             std::to_string(index + 1) + "  " + step.says);
    if (whole)
        pen.formula(kBody, problems::step_line(step));
}

/// The line for the learner's own next step.
void draw_own_step(const Style& style, QuestionModel& model, ColumnPen& pen) {
    const problems::Step& step = model.question().steps[model.asking.open_steps];
    for (std::size_t i = 0; i < step.options.size(); ++i)
        pen.paragraph(kCaption,
                      std::string(1, static_cast<char>('a' + i)) + "  " + step.options[i]);
    pen.skip(-6.0F);
    if (draw_text_line(style, pen, "##step", step.options.empty() ? step.unit : "a letter",
                       model.step_typed))
        enter_own_step(model);
}

void draw_steps(const Style& style, QuestionModel& model, ColumnPen& pen) {
    const std::size_t halves = halves_shown(model.asking);
    for (std::size_t i = 0; 2 * i < halves; ++i) {
        pen.skip(i == 0 ? 18.0F : 6.0F);
        draw_step(model.asking, i, 2 * i + 1 < halves, pen);
    }
    if (has_own_step(model.asking))
        draw_own_step(style, model, pen);
    const auto& told = model.asking.step_told;
    if (!model.asking.finished && told && !told->correct) {
        pen.skip(16.0F);
        pen.formula(kFault, told->feedback);
    }
}

void draw_answer(const QuestionModel& model, ColumnPen& pen) {
    pen.skip(12.0F);
    // Whoever put something on the drawing has not seen the letters.
    const bool by_hand = is_placed(model.question()) && model.typed.empty();
    pen.paragraph(kStrong, "Answer: " + (by_hand ? "the right place on the drawing"
                                                 : model.question().answer_text));
    if (!model.question().reason.empty() && !model.asking.told)
        pen.told(kCaption, model.question().reason);
}

/// The quiet words below a question: what else can be done, with its key.
struct WordChoice {
    const char* id;
    std::string word;
};

/// What can be done with a question whether it is answered or not.
void add_asides(const QuestionWords& around, std::vector<WordChoice>& words) {
    if (around.explains)
        words.push_back({"explain", "Explain this"});
    if (around.marked)
        words.push_back({"mark", *around.marked ? "Take the mark off" : "Mark to come back"});
}

std::vector<WordChoice> word_choices(const QuestionScreen& screen) {
    const learner::Asking& asking = screen.model->asking;
    std::vector<WordChoice> words;
    if (asking.finished) {
        add_asides(screen.words, words);
        return words;
    }
    if (has_hint(asking))
        words.push_back({"hint", halves_shown(asking) % 2 == 1 ? "Show how it comes out"
                                 : asking.open_steps == 0      ? "Show me the first step"
                                                               : "Show me the next step"});
    if (is_placed(asking.question))
        words.push_back({"letters", screen.shows_letters ? "Hide the letters" : "Show letters"});
    if (may_give_up(asking))
        words.push_back({"give_up", "I do not know"});
    if (may_skip(asking))
        words.push_back({"skip", "Skip"});
    add_asides(screen.words, words);
    return words;
}

void obey(std::string_view id, QuestionScreen& screen, QuestionFrame& frame) {
    screen.wants_keyboard = is_typed(screen.model->question()); // the caret keeps its line
    if (id == "hint")
        obey(learner::Aside::hint, screen, frame);
    else if (id == "letters")
        screen.shows_letters = !screen.shows_letters;
    else if (id == "give_up")
        obey(learner::Aside::give_up, screen, frame);
    else if (id == "skip")
        obey(learner::Aside::skip, screen, frame);
    else if (id == "explain")
        frame.wish = QuestionWish::explain;
    else if (id == "mark")
        frame.wish = QuestionWish::mark;
}

void draw_word_choices(const Style& style, ColumnPen& pen, QuestionScreen& screen,
                       QuestionFrame& frame) {
    const std::vector<WordChoice> words = word_choices(screen);
    float x = pen.left();
    for (const WordChoice& one : words) {
        const float width_px = text_width(style, kBody, one.word);
        if (x > pen.left() && x + width_px > pen.left() + pen.width()) {
            x = pen.left();
            pen.skip(28.0F);
        }
        if (word_button(style, one.id, {x, pen.y()}, one.word, false))
            obey(one.id, screen, frame);
        x += width_px + style.px(20.0F);
    }
    if (!words.empty())
        pen.skip(28.0F);
}

} // namespace

void enter_answer(const problems::Bank& bank, QuestionScreen& screen, QuestionFrame& frame) {
    if (!screen.model->asking.rules.feedback)
        return;
    if (screen.model->asking.finished) {
        frame.wish = QuestionWish::next_question;
        return;
    }
    screen.asked_empty = answer_of(*screen.model).empty();
    if (!screen.asked_empty)
        enter_answer(bank, *screen.model);
}

void draw_question(const Style& style, const problems::Bank& bank, ColumnPen& pen,
                   QuestionScreen& screen, QuestionFrame& frame) {
    QuestionModel& model = *screen.model;
    if (!screen.words.above.empty()) {
        pen.paragraph(kCaption, screen.words.above);
        pen.skip(10.0F);
    }
    if (is_drawn(model.question())) {
        pen.told(kBody, model.question().prompt);
        pen.skip(4.0F);
    }
    if (!model.asking.finished)
        pen.paragraph(kCaption, how_to_answer(model.question()));
    if (!model.asking.finished && is_placed(model.question()))
        pen.paragraph(kCaption, how_by_keys(problems::gesture_of(model.question())));
    pen.skip(-4.0F);
    const bool was_entered = frame.entered;
    if (is_typed(model.question()))
        draw_answer_line(style, screen, pen, frame);
    else
        draw_choices(style, model, pen, frame);
    if (is_placed(model.question()) && !model.typed.empty())
        pen.paragraph(kStrong, "You chose " + model.typed + ".");
    if (frame.entered && !was_entered)
        enter_answer(bank, screen, frame);
    if (screen.asked_empty && answer_of(model).empty()) {
        pen.skip(16.0F);
        pen.paragraph(kFault,
                      "Nothing is entered yet: " + lowered(how_to_answer(model.question())));
    }
    if (model.asking.told)
        draw_verdict(style, *model.asking.told, pen);
    const bool explained = model.asking.finished && model.asking.rules.explains;
    if (!model.asking.finished || explained)
        draw_steps(style, model, pen);
    if (explained)
        draw_answer(model, pen);
    pen.skip(30.0F);
    draw_word_choices(style, pen, screen, frame);
    if (style.terms != nullptr && style.terms->pressed())
        screen.wants_keyboard = is_typed(model.question()); // after a look into the glossary
}

} // namespace steelyard::app
