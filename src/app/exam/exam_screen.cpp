#include "app/exam/exam_screen.h"

#include "app/exam/beam_view.h"
#include "app/exam/offer_view.h"
#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/pressed_key.h"
#include "app/widgets/word_row.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using learner::Clock;
using scene::Role;
using scene::TextSize;

/// The clock is kept so often while nothing else is.
constexpr std::int64_t kHeartbeat_ms = 5 * learner::kSecond_ms;
/// The clock is drawn a little after its number has changed: a little before, and it would be drawn
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
    open_question(screen.question, *screen.model.question, {});
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

enum class ExamWish { none, back, forth, turn_weight, next_weight, last_weight, ask_to_end };

ExamWish wish_of(const std::vector<KeyPress>& keys) {
    for (const KeyPress& key : keys) {
        const bool control = (key.modifiers & key::kWithControl) != 0;
        if (key.key == key::kM)
            return ExamWish::turn_weight;
        if (key.key == key::kE && control)
            return ExamWish::ask_to_end;
    }
    // These reach also while the answer line has the keyboard.
    const bool shift = ImGui::GetIO().KeyShift;
    if (is_pressed(ImGuiKey_PageUp))
        return shift ? ExamWish::last_weight : ExamWish::back;
    if (is_pressed(ImGuiKey_PageDown))
        return shift ? ExamWish::next_weight : ExamWish::forth;
    return ExamWish::none;
}

/// What was typed so far comes along, wherever it goes.
void take_along(ExamScreen& screen) {
    if (screen.question.model)
        screen.model.question = screen.question.model;
}

void go_to(std::size_t item, ExamScreen& screen, Desk& desk, const Clock& now) {
    take_along(screen);
    settle(screen, desk, now, show_item(screen.model, item, *desk.course().bank, now), true);
}

void obey(ExamWish wish, ExamScreen& screen, Desk& desk, const Clock& now) {
    const learner::Exam& exam = screen.model.exam;
    if (exam.finished)
        return;
    switch (wish) {
    case ExamWish::none:
        return;
    case ExamWish::back:
        if (exam.at > 0)
            go_to(exam.at - 1, screen, desk, now);
        return;
    case ExamWish::forth:
        if (exam.at + 1 < exam.items.size())
            go_to(exam.at + 1, screen, desk, now);
        return;
    case ExamWish::next_weight:
    case ExamWish::last_weight:
        if (const auto item =
                learner::nearest_to_come_back(exam, wish == ExamWish::next_weight ? 1 : -1))
            go_to(*item, screen, desk, now);
        return;
    case ExamWish::turn_weight:
        return settle(screen, desk, now, turn_weight(screen.model, exam.at, now), false);
    case ExamWish::ask_to_end:
        take_along(screen);
        screen.model.asks_to_end = true; // it says how many have no answer
        return settle(screen, desk, now, take_in_answer(screen.model, *desk.course().bank, now),
                      false);
    }
}

/// The beam over the drawing. @return how far down it reaches [px]
float draw_exam_beam(const Style& style, const Layout& layout, const Clock& now,
                     const FrameInput& input, Desk& desk, ExamScreen& screen,
                     std::optional<std::size_t>& held) {
    const BeamLayout beam = lay_out_beam(style, layout, screen.model.exam.items.size());
    screen.pointer.aim(screen.model.exam.at, screen.less_motion);
    screen.pointer.advance(input.seconds);
    begin_beam_area(layout, beam);
    const BeamWishes done =
        draw_beam(style, beam, notches_of(screen.model.exam), screen.pointer.at(), true);
    end_area();
    held = done.held;
    if (done.go_to) {
        // Let go there, it stands there.
        screen.pointer.aim(*done.go_to, true);
        go_to(*done.go_to, screen, desk, now);
    } else if (done.hang) {
        settle(screen, desk, now, turn_weight(screen.model, *done.hang, now), false);
    }
    return beam.y(kBeamHeight_px);
}

void end_now(ExamScreen& screen, Desk& desk, const Clock& now) {
    take_along(screen);
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

/// Takes what was done to the question back into the exam.
void take_in(ExamScreen& screen, Desk& desk, const Clock& now, const QuestionFrame& asked) {
    if (!screen.question.model)
        return;
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

/// "18 of 40", the clock, and how many to come back to, which leads to the next of them.
ExamWish draw_head(const Style& style, const learner::Exam& exam, std::optional<std::size_t> held,
                   ColumnPen& pen) {
    constexpr TextStyle kNumber{TextSize::reading, true, Role::ink};
    const std::string clock = left_text(exam.left_ms());
    pen.line(kNumber, fmt::format("{} of {}", held.value_or(exam.at) + 1, exam.items.size()));
    draw_text(pen.list(), style, kQuietBody,
              {pen.left() + pen.width() - text_width(style, kQuietBody, clock), pen.y()}, clock);
    pen.skip(28.0F);
    ExamWish wish = ExamWish::none;
    if (const int waiting = exam.to_come_back(); waiting > 0)
        if (word_button(style, "waiting", {pen.left(), pen.y()},
                        fmt::format("{} to come back to", waiting), false))
            wish = ExamWish::next_weight;
    pen.skip(40.0F);
    return wish;
}

/// To come back, leaving and the end, in words.
ExamWish draw_words(const Style& style, const ExamScreen& screen, ColumnPen& pen,
                    QuestionFrame& asked) {
    const learner::Exam& exam = screen.model.exam;
    ExamWish wish = ExamWish::none;
    // In an answer line M is a letter.
    const bool typed = screen.question.model && is_typed(screen.question.model->question());
    if (word_button(style, "come_back", {pen.left(), pen.y()},
                    typed ? "Come back (Ctrl + M)" : "Come back (M)",
                    exam.items[exam.at].come_back))
        wish = ExamWish::turn_weight;
    pen.skip(34.0F);
    ImVec2 at{pen.left(), pen.y()};
    const auto pressed = draw_word_row(style, "words", {{"Save and exit"}, {"End the exam"}}, at,
                                       pen.left() + pen.width());
    if (pressed == 0U)
        asked.wish = QuestionWish::leave;
    else if (pressed)
        wish = ExamWish::ask_to_end;
    pen.skip_px(at.y - pen.y());
    pen.skip(30.0F);
    return wish;
}

ExamWish draw_exam_column(const Style& style, const Layout& layout, Desk& desk, const Clock& now,
                          std::optional<std::size_t> held, ExamScreen& screen,
                          QuestionFrame& asked) {
    const learner::Exam& exam = screen.model.exam;
    begin_question_column(layout, screen.question);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    ExamWish wish = draw_head(style, exam, held, pen);
    // While it asks whether to end, the answer line gives the keyboard back.
    if (screen.question.model && !screen.model.asks_to_end)
        draw_question(style, *desk.course().bank, pen, screen.question, asked);
    if (!screen.model.remark.empty())
        pen.paragraph(kFault, screen.model.remark);
    for (const std::string& notice : desk.notices())
        pen.paragraph(kFault, notice);
    if (screen.model.asks_to_end) {
        draw_end_question(style, pen, desk, now, screen);
    } else {
        if (const ExamWish asked_for = draw_words(style, screen, pen, asked);
            asked_for != ExamWish::none)
            wish = asked_for;
        const FootPress pressed =
            column_buttons(style, layout, pen, {"Back", exam.at > 0}, "Save and next");
        if (pressed == FootPress::side)
            wish = ExamWish::back;
        asked.entered = asked.entered || pressed == FootPress::main;
    }
    end_area();
    return wish;
}

/// Y and N answer whether to end. @return the keys that are left
std::vector<KeyPress> answer_end_question(const std::vector<KeyPress>& keys, ExamScreen& screen,
                                          Desk& desk, const Clock& now) {
    if (!screen.model.asks_to_end)
        return keys;
    for (const KeyPress& key : keys)
        if (key.key == key::kY)
            end_now(screen, desk, now);
        else if (key.key == key::kN || key.key == key::kEscape)
            screen.model.asks_to_end = false;
    return {};
}

void begin(ExamScreen& screen, Desk& desk, const Clock& now) {
    learner::resume(screen.model.exam, now);
    screen.begun = true;
    keep(screen, desk, now);
    mirror(screen);
}

/// What an exam is, and the one button that starts its clock.
ExamFrame run_offer(const Style& style, const Layout& layout, Desk& desk, const Clock& now,
                    const FrameInput& input, ExamScreen& screen) {
    ExamFrame frame;
    frame.drawing.size_px = layout.stage_px;
    bool begins = false;
    for (const KeyPress& key : *input.keys) {
        frame.left = frame.left || key.key == key::kEscape;
        begins = begins || key.key == key::kEnter || key.key == key::kKeypadEnter;
    }
    const OfferWish wish =
        draw_offer(style, layout, desk.course(), screen.model.exam, screen.trouble);
    frame.left = frame.left || wish == OfferWish::leave;
    if (wish == OfferWish::another) {
        const std::uint64_t seed = screen.model.exam.seed + 1;
        desk.give_up_exam(screen.model.exam);
        open_exam(screen, desk, seed, now);
    } else if ((begins || wish == OfferWish::begin) && screen.trouble.empty()) {
        begin(screen, desk, now);
    }
    return frame;
}

} // namespace

void open_exam(ExamScreen& screen, Desk& desk, std::uint64_t seed, const Clock& now) {
    screen = {};
    if (auto begun = desk.unfinished_exam()) {
        screen.model =
            sit_exam(std::move(*begun), *desk.course().bank, desk.course().exam.calculator);
        return;
    }
    auto exam = learner::new_exam(desk.course(), seed, now);
    if (!exam) {
        screen.trouble = exam.error().message;
        return;
    }
    foresee_exam(desk.course(), desk.standing(), *exam);
    screen.model = sit_exam(std::move(*exam), *desk.course().bank, desk.course().exam.calculator);
}

std::optional<double> next_tick_s(const ExamScreen& screen) {
    if (!screen.begun || screen.model.exam.finished)
        return std::nullopt;
    const std::int64_t due_ms =
        std::min(until_other_text(screen.model.exam.left_ms()), kHeartbeat_ms);
    return static_cast<double>(due_ms + kLate_ms) / static_cast<double>(learner::kSecond_ms);
}

bool is_moving(const ExamScreen& screen) {
    return screen.begun && !screen.report && !screen.pointer.at_rest();
}

ExamFrame run_exam(const Style& style, const Layout& layout, Desk& desk, const Clock& now,
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
    ExamFrame frame;
    frame.drawing.size_px = layout.stage_px;
    std::optional<std::size_t> held;
    const float beam_px = draw_exam_beam(style, layout, now, input, desk, screen, held);
    QuestionFrame asked;
    if (screen.question.model) {
        asked = read_question_keys(*desk.course().bank, keys, screen.question);
        draw_question_stage(style, layout, beam_px, input.pointer, screen.question, asked);
        frame.drawing = std::move(asked.drawing);
    }
    const std::size_t at = screen.model.exam.at;
    const ExamWish wish = draw_exam_column(style, layout, desk, now, held, screen, asked);
    if (asked.wish == QuestionWish::leave) {
        take_in(screen, desk, now, {QuestionWish::none, false, true, {}});
        keep(screen, desk, now);
        frame.left = true;
    } else if (!screen.report && screen.model.exam.at == at) {
        take_in(screen, desk, now, asked);
        obey(wish, screen, desk, now);
    }
    if (screen.model.asks_to_end)
        screen.question.wants_keyboard = false; // Y and N are for the question whether to end
    return frame;
}

} // namespace steelyard::app
