#pragma once
// A session on the stage: question after question, and what it came to.

#include "app/practice/desk.h"
#include "app/question/question_screen.h"
#include "learner/study/session.h"

#include <optional>

namespace steelyard::app {

struct SessionScreen {
    learner::Session session;
    QuestionScreen question;
    /// A skill, by its index, that is new with the present question: its pages come first.
    std::optional<std::size_t> introduces;
};

/// Puts the first question on the screen.
void open_session(SessionScreen& screen, learner::Session session, Desk& desk,
                  const learner::Clock& now);

/// Goes on with a session that was kept in the middle.
/// @return false where it cannot; the screen is then as it was
bool resume_session(SessionScreen& screen, const std::string& text, Desk& desk,
                    const learner::Clock& now);

struct SessionFrame {
    bool left = false;    ///< back to the home of practice
    bool again = false;   ///< the same once more
    bool redo = false;    ///< the mistakes once more
    bool explain = false; ///< the pages of the present question's skill are asked for
    scene::Drawing drawing;
};

/// Runs one frame. Answers are kept at the desk in the frame in which they are marked, before that
/// frame is shown.
SessionFrame run_session(const Style& style, const Layout& layout, Desk& desk,
                         const learner::Clock& now, const FrameInput& input, SessionScreen& screen);

/// What run_session does after the learner: keeps new answers and follows the wish, if any.
/// @return whether the session is left with nothing to show for it
bool settle_session(SessionScreen& screen, Desk& desk, const learner::Clock& now,
                    QuestionWish wish);

} // namespace steelyard::app
