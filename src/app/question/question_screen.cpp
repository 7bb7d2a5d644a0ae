#include "app/question/question_screen.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/told_text.h"
#include "publish/question/question_drawing.h"

#include <imgui_internal.h>

#include <algorithm>
#include <utility>

namespace steelyard::app {

namespace {

/// A drawing on a lower stage than this, at 100 %, cannot be read.
constexpr double kLeastStage_px = 120.0;

using problems::Question;
using scene::Role;
using scene::TextSize;

/// The letter of a key; empty when it has none.
std::string letter_of(const KeyPress& key) {
    return key.key < key::kA || key.key > key::kZ
               ? std::string()
               : std::string(1, static_cast<char>('A' + (key.key - key::kA)));
}

/// @return true when the key was meant for the question
void read_key(const KeyPress& key, QuestionScreen& screen, QuestionFrame& frame) {
    QuestionModel& model = *screen.model;
    if (nudge_place(key, model) || place_by_letter(model, letter_of(key)) ||
        choose_by_letter(model, letter_of(key))) {
        frame.let_go = true;
        return;
    }
    if (key.key == key::kEscape) {
        frame.wish = QuestionWish::leave;
    } else if (key.key >= key::k1 && key.key <= key::k9) {
        choose(model, static_cast<std::size_t>(key.key - key::k1));
        frame.let_go = true;
    } else if (key.key == key::kEnter || key.key == key::kKeypadEnter) {
        frame.entered = true;
    } else if (key.key == key::kH) {
        give_hint(model.asking);
    } else if (key.key == key::kW) {
        give_up(model.asking);
    } else if (key.key == key::kN && may_skip(model.asking)) {
        frame.wish = QuestionWish::skip;
    } else if (key.key == key::kE && screen.words.explains) {
        frame.wish = QuestionWish::explain;
    } else if (key.key == key::kM && screen.words.marked) {
        frame.wish = QuestionWish::mark;
    } else if (key.key == key::kL) {
        screen.shows_letters = !screen.shows_letters;
    }
}

/// A question without a drawing has the stage for its words.
void draw_prompt_on_stage(const Style& style, const scene::Point& stage_px, double top_px,
                          const std::string& prompt) {
    const auto left = static_cast<float>(0.08 * stage_px.x());
    const double room_px = stage_px.y() - top_px;
    draw_told_on_stage(style, "prompt", {TextSize::reading, true, Role::ink},
                       {left, static_cast<float>(top_px + std::max(100.0, 0.36 * room_px))},
                       std::min(static_cast<float>(stage_px.x()) - 2.0F * left, style.px(680.0F)),
                       prompt);
}

} // namespace

void open_question(QuestionScreen& screen, QuestionModel model, QuestionWords words) {
    screen = {};
    screen.model = std::move(model);
    screen.words = std::move(words);
    screen.wants_keyboard = is_typed(screen.model->question());
}

void begin_question_column(const Layout& layout, QuestionScreen& screen) {
    if (std::exchange(screen.from_the_top, false))
        ImGui::SetNextWindowScroll({-1.0F, 0.0F});
    begin_area("column", layout.column_at_px, layout.column_px, true);
}

bool question_claims(const QuestionScreen& screen, const KeyPress& key) {
    if (!screen.model || key.modifiers != 0)
        return false;
    if (key.key == key::kW || key.key == key::kB)
        return true; // a slip of the finger is not to lead away from a question
    return is_placed(screen.model->question()) && key.key >= key::kA &&
           key.key <
               key::kA + static_cast<int>(problems::spots_of(screen.model->question()).size());
}

QuestionFrame read_question_keys(const problems::Bank& bank, const std::vector<KeyPress>& keys,
                                 QuestionScreen& screen) {
    QuestionFrame frame;
    for (const KeyPress& key : keys)
        read_key(key, screen, frame);
    if (frame.entered)
        enter_answer(bank, screen, frame);
    return frame;
}

void draw_question_stage(const Style& style, const Layout& layout, double top_px,
                         const StagePointer& pointer, QuestionScreen& screen,
                         QuestionFrame& frame) {
    QuestionModel& model = *screen.model;
    publish::QuestionDrawing how;
    how.size_px = layout.stage_px - scene::Point(0.0, top_px);
    how.text_scale = style.fonts.scale;
    how.top_px = top_px > 0.0 ? 8.0 : 64.0 * style.fonts.scale;
    how.answered = model.asking.finished && model.asking.rules.feedback;
    if (const auto& told = model.asking.told; told && !told->correct) {
        how.wrong = told->drawn_wrong;
        how.right = told->drawn_right;
    }
    Question shown = model.question();
    if (is_placed(shown) && !screen.shows_letters)
        std::get<problems::PlaceWanted>(shown.wanted).spots.clear();
    // With very large text there may be no room for a drawing: its labels would lie on the words.
    if (is_drawn(shown) && how.size_px.y() < kLeastStage_px * how.text_scale) {
        frame.drawing.size_px = layout.stage_px;
        return;
    }
    std::optional<scene::StageView> view = publish::question_view(shown, how);
    if (view)
        view->origin_px.y() += top_px;
    if (view)
        frame.let_go = drag_place(pointer, *view, model, screen.drag) || frame.let_go;
    if (!is_drawn(shown))
        draw_prompt_on_stage(style, layout.stage_px, top_px, shown.prompt);
    frame.drawing = scene::moved(publish::question_drawing(shown, how), {0.0, top_px});
    if (view)
        draw_place(style, *view, model, frame.drawing.shapes);
}

namespace {

/// The question's code, which a press puts into the clipboard.
void draw_code(const Style& style, QuestionScreen& screen, ColumnPen& pen) {
    const std::string& code = screen.model->question().code;
    const float width_px =
        draw_text(pen.list(), style, kCaption, {pen.left(), pen.y()}, "code " + code);
    const float left_px = pen.left() + width_px + style.px(12.0F);
    if (word_button(style, "copy_code", {left_px, pen.y()},
                    screen.copied == code ? "copied" : "copy", false)) {
        ImGui::SetClipboardText(code.c_str());
        screen.copied = code;
    }
    pen.skip(14.0F);
}

} // namespace

QuestionFrame run_question(const Style& style, const Layout& layout, const problems::Bank& bank,
                           const FrameInput& input, QuestionScreen& screen) {
    QuestionFrame frame = read_question_keys(bank, *input.keys, screen);
    draw_question_stage(style, layout, 0.0, input.pointer, screen, frame);
    begin_question_column(layout, screen);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    draw_question(style, bank, pen, screen, frame);
    if (word_button(style, "leave", {pen.left(), pen.y()}, screen.words.leave, false))
        frame.wish = QuestionWish::leave;
    pen.skip(26.0F);
    draw_code(style, screen, pen);
    if (column_button(style, layout, pen,
                      screen.model->asking.finished ? screen.words.next : "Check"))
        enter_answer(bank, screen, frame);
    end_area();
    return frame;
}

} // namespace steelyard::app
