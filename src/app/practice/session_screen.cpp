#include "app/practice/session_screen.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "learner/study/kept_session.h"

namespace steelyard::app {

namespace {

using learner::Present;
using learner::Session;
using scene::Role;
using scene::TextSize;

std::string leaving_text(const Desk& desk) {
    return desk.has_kept_all() ? "Leave; everything is kept" : "Leave; not everything is kept";
}

QuestionWords words_for(const Session& session, const Present& present,
                        const learner::Asking& asking, const Desk& desk) {
    QuestionWords words;
    words.above =
        count_text(session, present) + ". " + introduction(session, present.course, asking);
    if (is_example(session))
        words.next = "I have read it";
    words.leave = leaving_text(desk);
    words.explains = true;
    return words;
}

/// Puts a question on the screen and notes where the session is.
void show_asking(SessionScreen& screen, Desk& desk, const Present& present,
                 learner::Asking asking) {
    QuestionWords words = words_for(screen.session, present, asking, desk);
    words.marked = desk.is_marked(asking.question.code);
    desk.keep_session(write_session(screen.session, present.course, asking));
    QuestionModel model;
    model.asking = std::move(asking);
    open_question(screen.question, std::move(model), std::move(words));
}

void close_question(SessionScreen& screen, Desk& desk, const learner::Clock& now) {
    screen.question.model.reset();
    desk.forget_session();
    desk.back_up(now);
}

void advance(SessionScreen& screen, Desk& desk, const learner::Clock& now) {
    const Present present{desk.course(), desk.standing(), now};
    auto asking = next_question(screen.session, present);
    if (!asking)
        return close_question(screen, desk, now);
    if (learner::is_new(screen.session, present))
        screen.introduces = screen.session.next.skill;
    show_asking(screen, desk, present, std::move(*asking));
}

void keep_new_answers(SessionScreen& screen, Desk& desk, const learner::Clock& now, bool goes_on) {
    const learner::Asking& asking = screen.question.model->asking;
    const auto answers =
        new_answers(screen.session, {desk.course(), desk.standing(), now}, asking, goes_on);
    for (const learner::Answer& answer : answers)
        desk.keep_answer(answer, now);
    screen.question.words.leave = leaving_text(desk);
    if (!answers.empty() && !goes_on)
        desk.keep_session(write_session(screen.session, desk.course(), asking));
}

/// What to do now, in one sentence: mistakes first, then what the plan still wants today.
std::string one_thing_to_do(const Desk& desk, const Session& session) {
    const int missed = session.answered - session.right;
    if (session.kind != learner::SessionKind::redo && missed > 0)
        return missed == 1 ? "Redo the question that you missed (R)."
                           : "Redo the " + std::to_string(missed) + " that you missed (R).";
    return say(desk.outlook().plan);
}

/// What the session came to: the result large, then what moved, the readiness and the plan.
void draw_result(const Style& style, const Layout& layout, const Desk& desk,
                 const Session& session) {
    begin_area("result", scene::Point(0.0, style.px(64.0F)),
               layout.stage_px - scene::Point(0.0, style.px(64.0F)), true);
    Layout stage = layout;
    stage.column_at_px = {0.0, style.px(64.0F)};
    stage.column_px = {std::min(layout.stage_px.x(), static_cast<double>(style.px(720.0F))),
                       layout.stage_px.y() - style.px(64.0F)};
    ColumnPen pen(style, stage);
    pen.skip(56.0F);
    pen.line({TextSize::key, true, Role::ink},
             std::to_string(session.right) + " of " + std::to_string(session.answered));
    pen.skip(36.0F);
    pen.paragraph(kBody, result_text(session));
    if (!session.trouble.empty())
        pen.paragraph({TextSize::body, false, Role::wrong}, session.trouble);
    const auto moved = moved_skills(session, desk.course(), desk.outlook().stairs);
    if (!moved.empty()) {
        pen.skip(20.0F);
        pen.paragraph(kStrong, "What moved");
        for (const std::string& line : moved)
            pen.paragraph(kBody, line);
    }
    pen.skip(20.0F);
    pen.paragraph(kStrong, "Next");
    pen.paragraph(kBody, one_thing_to_do(desk, session));
    pen.skip(16.0F);
    pen.paragraph(kQuietBody, say(desk.outlook().ready, desk.course()));
    pen.finish(24.0F);
    end_area();
}

SessionFrame run_result(const Style& style, const Layout& layout, const Desk& desk,
                        const FrameInput& input, const SessionScreen& screen) {
    SessionFrame frame;
    for (const KeyPress& key : *input.keys) {
        frame.left = frame.left || key.key == key::kEscape || key.key == key::kEnter ||
                     key.key == key::kKeypadEnter;
        frame.again = frame.again || key.key == key::kA;
        frame.redo = frame.redo || key.key == key::kR;
    }
    draw_result(style, layout, desk, screen.session);
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    pen.paragraph(kCaption, desk.kept_text());
    for (const std::string& notice : desk.notices())
        pen.paragraph(kFault, notice);
    pen.skip(16.0F);
    if (word_button(style, "redo", {pen.left(), pen.y()}, "Redo my mistakes (R)", false))
        frame.redo = true;
    pen.skip(28.0F);
    if (word_button(style, "again", {pen.left(), pen.y()}, "Another one (A)", false))
        frame.again = true;
    pen.skip(24.0F);
    if (column_button(style, layout, pen, "Back to practice"))
        frame.left = true;
    end_area();
    frame.drawing.size_px = layout.stage_px;
    return frame;
}

} // namespace

void open_session(SessionScreen& screen, Session session, Desk& desk, const learner::Clock& now) {
    screen = {};
    screen.session = std::move(session);
    advance(screen, desk, now);
}

bool resume_session(SessionScreen& screen, const std::string& text, Desk& desk,
                    const learner::Clock& now) {
    auto kept = learner::read_session(text, desk.course());
    if (!kept)
        return false;
    const Present present{desk.course(), desk.standing(), now};
    auto asking = learner::resume_session(*kept, present);
    if (!asking)
        return false;
    screen = {};
    screen.session = std::move(kept->session);
    show_asking(screen, desk, present, std::move(*asking));
    return true;
}

SessionFrame run_session(const Style& style, const Layout& layout, Desk& desk,
                         const learner::Clock& now, const FrameInput& input,
                         SessionScreen& screen) {
    if (!screen.question.model)
        return run_result(style, layout, desk, input, screen);
    SessionFrame frame;
    QuestionFrame asked = run_question(style, layout, *desk.course().bank, input, screen.question);
    frame.drawing = std::move(asked.drawing);
    frame.left = settle_session(screen, desk, now, asked.wish);
    frame.explain = asked.wish == QuestionWish::explain;
    return frame;
}

bool settle_session(SessionScreen& screen, Desk& desk, const learner::Clock& now,
                    QuestionWish wish) {
    const bool goes_on = wish == QuestionWish::next_question || wish == QuestionWish::skip;
    keep_new_answers(screen, desk, now, goes_on);
    if (goes_on)
        advance(screen, desk, now);
    if (wish == QuestionWish::mark) {
        std::optional<bool>& marked = screen.question.words.marked;
        marked = !marked.value_or(false);
        desk.mark(screen.question.model->question().code, *marked);
    }
    if (wish != QuestionWish::leave)
        return false;
    end_session(screen.session, now);
    close_question(screen, desk, now);
    return screen.session.answered == 0;
}

} // namespace steelyard::app
