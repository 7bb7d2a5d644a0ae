#pragma once
// A session on the stage: question after question, and what it came to.

#include "app/practice/desk.h"
#include "app/practice/session.h"
#include "app/question/question_screen.h"

namespace steelyard::app {

struct SessionScreen {
    Session session;
    QuestionScreen question;
};

/// Puts the first question on the screen.
void open_session(SessionScreen& screen, Session session, Desk& desk, const learner::Clock& now);

struct SessionOutcome {
    bool left = false;  ///< back to the home of practice
    bool again = false; ///< the same once more
    scene::Drawing drawing;
};

/// Runs one frame. Answers are kept at the desk in the frame in which they are marked.
SessionOutcome run_session(const Style& style, const Layout& layout, Desk& desk,
                           const learner::Clock& now, const FrameInput& input,
                           SessionScreen& screen);

} // namespace steelyard::app
