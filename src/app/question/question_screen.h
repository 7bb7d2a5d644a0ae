#pragma once
// A question on the stage: words and answer in the column, its lever beside them.

#include "app/frame/layout.h"
#include "app/frame/window.h"
#include "app/look/style.h"
#include "app/question/question_model.h"

namespace steelyard::app {

struct QuestionScreen {
    std::optional<QuestionModel> model; ///< empty = no question is open
    bool wants_keyboard = false;        ///< the answer line takes the keyboard in the next frame
};

enum class QuestionWish { none, next_question, leave };

struct QuestionOutcome {
    QuestionWish wish = QuestionWish::none;
    scene::Drawing drawing; ///< of the stage
};

/// Runs one frame. Keys: Enter checks, digits choose, Escape leaves. A question must be open.
QuestionOutcome run_question(const Style& style, const Layout& layout, const problems::Bank& bank,
                             const std::vector<KeyPress>& keys, QuestionScreen& screen);

} // namespace steelyard::app
