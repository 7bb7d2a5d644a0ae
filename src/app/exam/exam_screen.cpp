#include "app/exam/exam_screen.h"

#include "app/exam/offer_view.h"
#include "app/exam/squares.h"
#include "app/look/text_styles.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/pressed_key.h"

#include <GLFW/glfw3.h>
#include <fmt/format.h>

namespace steelyard::app {

namespace {

using learner::Clock;

/// The clock is kept so often while nothing else is.
constexpr learner::TimeMs kHeartbeat_ms = 5 * learner::kSecond_ms;
/// The clock is drawn a little after its second has changed: a little before, and it would be drawn
/// for nothing and once more.
constexpr learner::TimeMs kLate_ms = 20;

void keep(ExamScreen& screen, Desk& desk, const Clock& now) {
    desk.keep_exam(screen.model.exam);
    screen.kept_ms = now.utc_ms;
}

/// Puts the model's question on the screen's own.
void mirror(ExamScreen& screen) {
    screen.question.model.reset();
    if (!screen.model.question)
        return;
    QuestionWords words;
    words.may_give_up = false;
    words.explains = false;
    open_question(screen.question, *screen.model.question, std::move(words));
}

void close(ExamScreen& screen, Desk& desk, const Clock& now) {
    ReportScreen report;
    const learner::Readiness& before = desk.outlook().ready;
    if (before.answers > 0)
        report.foreseen = fmt::format("Foreseen before: {} to {} of {}.", before.low, before.high,
                                      before.questions);
    report.report = report_on(desk.course(), screen.model.exam);
    desk.close_exam(screen.model.exam, report.report, now);
    desk.back_up(now);
    screen.report = std::move(report);
}

/// After a change: it may have to be kept, it may have put another question on the screen, and it
/// may have been the end.
void settle(ExamScreen& screen, Desk& desk, const Clock& now, bool changed, bool moved) {
    if (changed)
        keep(screen, desk, now);
    if (moved)
        mirror(screen);
    if (screen.model.exam.finished)
        close(screen, desk, now);
}

enum class ExamWish { none, back, forth, flag, ask_to_end };

ExamWish wish_of(const std::vector<KeyPress>& keys) {
    for (const KeyPress& key : keys) {
        const bool control = (key.modifiers & GLFW_MOD_CONTROL) != 0;
        if (key.key == GLFW_KEY_F)
            return ExamWish::flag;
        if (key.key == GLFW_KEY_E && control)
            return ExamWish::ask_to_end;
    }
    // These reach also while the answer line has the keyboard.
    if (is_pressed(ImGuiKey_PageUp))
        return ExamWish::back;
    if (is_pressed(ImGuiKey_PageDown))
        return ExamWish::forth;
    return ExamWish::none;
}

void obey(ExamWish wish, ExamScreen& screen, Desk& desk, const Clock& now) {
    ExamModel& model = screen.model;
    if (wish == ExamWish::none || model.exam.finished)
        return;
    const problems::Bank& bank = *desk.course().bank;
    const std::size_t at = model.exam.at;
    // What was typed so far comes along.
    if (screen.question.model)
        model.question = screen.question.model;
    if (wish == ExamWish::back && at > 0)
        settle(screen, desk, now, show_item(model, at - 1, bank, now), true);
    else if (wish == ExamWish::forth && at + 1 < model.exam.items.size())
        settle(screen, desk, now, show_item(model, at + 1, bank, now), true);
    else if (wish == ExamWish::flag)
        settle(screen, desk, now, toggle_flag(model, now), false);
    else if (wish == ExamWish::ask_to_end)
        model.asks_to_end = true;
}

/// The strip over the drawing. @return how far down it reaches [px]
float draw_strip(const Style& style, const Layout& layout, const Clock& now, Desk& desk,
                 ExamScreen& screen) {
    std::vector<Square> squares;
    const learner::Exam& exam = screen.model.exam;
    for (std::size_t i = 0; i < exam.items.size(); ++i)
        squares.push_back(
            {!exam.items[i].answer.empty(), exam.items[i].flagged, i == exam.at, std::nullopt});
    const float top_px = style.px(64.0F);
    const float width_px = static_cast<float>(layout.stage_px.x());
    const float height_px = squares_height(style, width_px - 48.0F, squares.size());
    begin_area("strip", {0.0, top_px}, {width_px, height_px});
    const auto pressed = draw_squares(style, {24.0F, top_px}, width_px - 48.0F, squares);
    end_area();
    if (pressed) {
        if (screen.question.model)
            screen.model.question = screen.question.model;
        settle(screen, desk, now, show_item(screen.model, *pressed, *desk.course().bank, now),
               true);
    }
    return top_px + height_px;
}

void end_now(ExamScreen& screen, Desk& desk, const Clock& now) {
    if (screen.question.model)
        screen.model.question = screen.question.model;
    end_exam(screen.model, *desk.course().bank, now);
    settle(screen, desk, now, true, false);
}

void draw_end_question(const Style& style, ColumnPen& pen, Desk& desk, const Clock& now,
                       ExamScreen& screen) {
    pen.skip(8.0F);
    pen.paragraph(kStrong, end_question(screen.model));
    pen.skip(8.0F);
    if (word_button(style, "end_yes", {pen.left(), pen.y()}, "End it (Y)", true))
        end_now(screen, desk, now);
    else if (word_button(style, "end_no", {pen.left() + style.px(110.0F), pen.y()}, "Not yet (N)",
                         false))
        screen.model.asks_to_end = false;
    pen.finish(30.0F);
}

/// In the answer line, letters with Enter do what they do in the terminal.
ExamWish wish_of_letter(const QuestionModel& question) {
    if (!is_typed(question.question))
        return ExamWish::none;
    return question.typed == "f"   ? ExamWish::flag
           : question.typed == "e" ? ExamWish::ask_to_end
           : question.typed == "p" ? ExamWish::back
           : question.typed == "n" ? ExamWish::forth
                                   : ExamWish::none;
}

/// Takes what was done to the question back into the exam.
void take_in(ExamScreen& screen, Desk& desk, const Clock& now, const QuestionOutcome& asked) {
    if (!screen.question.model)
        return;
    if (const ExamWish wish = wish_of_letter(*screen.question.model);
        asked.entered && wish != ExamWish::none) {
        const learner::Exam& exam = screen.model.exam;
        take_answer(*screen.question.model, exam.items[exam.at].answer);
        return obey(wish, screen, desk, now);
    }
    screen.model.question = screen.question.model;
    const problems::Bank& bank = *desk.course().bank;
    if (asked.entered) {
        const std::size_t at = screen.model.exam.at;
        const bool changed = go_on(screen.model, bank, now);
        settle(screen, desk, now, changed, screen.model.exam.at != at);
    } else if (asked.let_go) {
        settle(screen, desk, now, take_in_answer(screen.model, bank, now), false);
    }
}

/// Flag, back and forth, the end, and leaving, in words.
ExamWish draw_words(const Style& style, const learner::Exam& exam, ColumnPen& pen,
                    QuestionOutcome& asked) {
    ExamWish wish = ExamWish::none;
    const bool flagged = exam.items[exam.at].flagged;
    const auto word = [&](const char* id, float at_px, const char* text, bool in_force,
                          bool enabled, ExamWish meant) {
        if (word_button(style, id, {pen.left() + style.px(at_px), pen.y()}, text, in_force,
                        enabled))
            wish = meant;
    };
    word("flag", 0.0F, flagged ? "Flagged (F)" : "Flag (F)", flagged, true, ExamWish::flag);
    word("back", 110.0F, "Back", false, exam.at > 0, ExamWish::back);
    word("forth", 170.0F, "Forward", false, exam.at + 1 < exam.items.size(), ExamWish::forth);
    pen.skip(30.0F);
    word("end", 0.0F, "End the exam", false, true, ExamWish::ask_to_end);
    if (word_button(style, "leave", {pen.left() + style.px(130.0F), pen.y()}, "Leave it waiting",
                    false))
        asked.wish = QuestionWish::leave;
    pen.skip(30.0F);
    return wish;
}

ExamWish draw_exam_column(const Style& style, const Layout& layout, Desk& desk, const Clock& now,
                          ExamScreen& screen, QuestionOutcome& asked) {
    const learner::Exam& exam = screen.model.exam;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    const std::string clock = learner::minutes_text(exam.left_ms()) + " left";
    pen.line(kCaption, fmt::format("Question {} of {}", exam.at + 1, exam.items.size()));
    draw_text(pen.list(), style, kCaption,
              {pen.left() + pen.width() - text_width(style, kCaption, clock), pen.y()}, clock);
    pen.skip(30.0F);
    // While it asks whether to end, the answer line gives the keyboard back.
    if (screen.question.model && !screen.model.asks_to_end)
        draw_question(style, *desk.course().bank, pen, screen.question, asked);
    if (!screen.model.remark.empty())
        pen.paragraph(kFault, screen.model.remark);
    const ExamWish wish = draw_words(style, exam, pen, asked);
    for (const std::string& notice : desk.notices())
        pen.paragraph(kFault, notice);
    if (screen.model.asks_to_end)
        draw_end_question(style, pen, desk, now, screen);
    else if (column_button(style, layout, pen, "Keep and go on"))
        asked.entered = true;
    end_area();
    return wish;
}

/// Y and N answer whether to end. @return the keys that are left
std::vector<KeyPress> answer_end_question(const std::vector<KeyPress>& keys, ExamScreen& screen,
                                          Desk& desk, const Clock& now) {
    if (!screen.model.asks_to_end)
        return keys;
    for (const KeyPress& key : keys) {
        if (key.key == GLFW_KEY_Y)
            end_now(screen, desk, now);
        else if (key.key == GLFW_KEY_N || key.key == GLFW_KEY_ESCAPE)
            screen.model.asks_to_end = false;
    }
    return {};
}

void begin(ExamScreen& screen, Desk& desk, const Clock& now) {
    learner::resume(screen.model.exam, now);
    screen.begun = true;
    keep(screen, desk, now);
    mirror(screen);
}

/// What an exam is, and the one button that starts its clock.
ExamOutcome run_offer(const Style& style, const Layout& layout, Desk& desk, const Clock& now,
                      const FrameInput& input, ExamScreen& screen) {
    ExamOutcome outcome;
    outcome.drawing.size_px = layout.stage_px;
    bool begins = false;
    for (const KeyPress& key : *input.keys) {
        outcome.left = outcome.left || key.key == GLFW_KEY_ESCAPE;
        begins = begins || key.key == GLFW_KEY_ENTER || key.key == GLFW_KEY_KP_ENTER;
    }
    const OfferWish wish =
        draw_offer(style, layout, desk.course(), screen.model.exam, screen.trouble);
    outcome.left = outcome.left || wish == OfferWish::leave;
    if (wish == OfferWish::another) {
        const std::uint64_t seed = screen.model.exam.seed + 1;
        desk.give_up_exam(screen.model.exam);
        open_exam(screen, desk, seed, now);
    } else if ((begins || wish == OfferWish::begin) && screen.trouble.empty()) {
        begin(screen, desk, now);
    }
    return outcome;
}

} // namespace

void open_exam(ExamScreen& screen, Desk& desk, std::uint64_t seed, const Clock& now) {
    screen = {};
    if (auto begun = desk.unfinished_exam()) {
        screen.model = sit_exam(std::move(*begun), *desk.course().bank);
        return;
    }
    auto exam = learner::new_exam(desk.course(), seed, now);
    if (!exam) {
        screen.trouble = exam.error().message;
        return;
    }
    foresee_exam(desk.course(), desk.standing(), *exam);
    screen.model = sit_exam(std::move(*exam), *desk.course().bank);
}

std::optional<double> next_tick_s(const ExamScreen& screen) {
    if (!screen.begun || screen.model.exam.finished)
        return std::nullopt;
    return static_cast<double>(screen.model.exam.left_ms() % learner::kSecond_ms + kLate_ms) /
           static_cast<double>(learner::kSecond_ms);
}

ExamOutcome run_exam(const Style& style, const Layout& layout, Desk& desk, const Clock& now,
                     const FrameInput& input, ExamScreen& screen) {
    if (screen.begun && !screen.report) {
        pass_time(screen.model, now);
        settle(screen, desk, now, now.utc_ms - screen.kept_ms >= kHeartbeat_ms, false);
    }
    if (screen.report)
        return run_report(style, layout, desk, screen.model.exam, input, *screen.report);
    if (!screen.begun)
        return run_offer(style, layout, desk, now, input, screen);
    const std::vector<KeyPress> keys = answer_end_question(*input.keys, screen, desk, now);
    obey(wish_of(keys), screen, desk, now);
    ExamOutcome outcome;
    outcome.drawing.size_px = layout.stage_px;
    const float strip_px = draw_strip(style, layout, now, desk, screen);
    QuestionOutcome asked;
    if (screen.question.model) {
        asked = read_question_keys(*desk.course().bank, keys, screen.question);
        draw_question_stage(style, layout, strip_px, input.pointer, screen.question, asked);
        outcome.drawing = std::move(asked.drawing);
    }
    const std::size_t at = screen.model.exam.at;
    const ExamWish wish = draw_exam_column(style, layout, desk, now, screen, asked);
    if (asked.wish == QuestionWish::leave) {
        take_in(screen, desk, now, {QuestionWish::none, false, true, {}});
        keep(screen, desk, now);
        outcome.left = true;
    } else if (!screen.report && screen.model.exam.at == at) {
        take_in(screen, desk, now, asked);
        obey(wish, screen, desk, now);
    }
    if (screen.model.asks_to_end)
        screen.question.wants_keyboard = false; // Y and N are for the question whether to end
    return outcome;
}

} // namespace steelyard::app
