#include "app/practice/session_screen.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

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

void advance(SessionScreen& screen, Desk& desk, const learner::Clock& now) {
    const Present present{desk.course(), desk.standing(), now};
    auto asking = next_question(screen.session, present);
    if (!asking) {
        screen.question.model.reset();
        desk.back_up(now);
        return;
    }
    if (learner::is_new(screen.session, present))
        screen.introduces = screen.session.next.skill;
    QuestionWords words = words_for(screen.session, present, *asking, desk);
    QuestionModel model;
    model.asking = std::move(*asking);
    open_question(screen.question, std::move(model), std::move(words));
}

void keep_new_answers(SessionScreen& screen, Desk& desk, const learner::Clock& now, bool goes_on) {
    for (const learner::Answer& answer :
         new_answers(screen.session, {desk.course(), desk.standing(), now},
                     screen.question.model->asking, goes_on))
        desk.keep_answer(answer, now);
    screen.question.words.leave = leaving_text(desk);
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
    pen.paragraph(kBody, say(desk.outlook().ready, desk.course()));
    pen.skip(8.0F);
    pen.paragraph(kBody, say(desk.outlook().plan));
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
    }
    draw_result(style, layout, desk, screen.session);
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    pen.paragraph(kCaption, desk.kept_text());
    for (const std::string& notice : desk.notices())
        pen.paragraph(kFault, notice);
    pen.skip(16.0F);
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
    if (wish != QuestionWish::leave)
        return false;
    end_session(screen.session, now);
    screen.question.model.reset();
    desk.back_up(now);
    return screen.session.answered == 0;
}

} // namespace steelyard::app
