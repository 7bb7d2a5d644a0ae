#pragma once
// A question on the stage: words and answer in the column, its lever beside them.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/question/place_stage.h"
#include "app/question/question_model.h"
#include "app/widgets/column_pen.h"

#include <string>

namespace steelyard::app {

/// What the place in which a question is asked says around it.
struct QuestionWords {
    std::string above;                  ///< over the question: why this one, which of how many
    std::string next = "Next question"; ///< on the button once it is answered
    std::string leave = "Back to the bench";
    bool explains = false; ///< there are pages about its skill
    /// Whether the question is marked to come back to; empty where it cannot be.
    std::optional<bool> marked{};
};

struct QuestionScreen {
    std::optional<QuestionModel> model; ///< empty = no question is open
    QuestionWords words;
    bool wants_keyboard = false; ///< the answer line takes the keyboard in the next frame
    bool shows_letters = false;  ///< of a place question: the places to choose from
    bool asked_empty = false;    ///< it was to be checked with nothing entered
    bool from_the_top = true;    ///< its column does not stay where the last one was scrolled to
    std::string copied;          ///< the code that was put into the clipboard
    PlaceDrag drag;
};

/// Puts a question on the screen.
void open_question(QuestionScreen& screen, QuestionModel model, QuestionWords words);

/// Begins the area of a question's column, which is to be ended with end_area(). Another question
/// begins at its top, wherever the last one was scrolled to.
void begin_question_column(const Layout& layout, QuestionScreen& screen);

enum class QuestionWish { none, next_question, skip, explain, mark, leave };

struct QuestionFrame {
    QuestionWish wish = QuestionWish::none;
    bool entered = false;   ///< Enter or the main button in this frame
    bool let_go = false;    ///< a choice was made, or a drag ended: the answer may be kept
    scene::Drawing drawing; ///< of the stage
};

/// True for the keys that belong to a question although the window has a use for them: W, B, and
/// the letters of its places.
bool question_claims(const QuestionScreen& screen, const KeyPress& key);

/// Keys of a question: Enter checks, digits choose, arrows move what is placed, letters place, H
/// gives a hint, W the worked answer, E explains, M marks, N skips, Escape leaves. In the answer
/// line h, ?, w and n with Enter do the same, as in the terminal.
QuestionFrame read_question_keys(const problems::Bank& bank, const std::vector<KeyPress>& keys,
                                 QuestionScreen& screen);

/// What Enter and the main button do: the answer is marked, or the next question asked for.
void enter_answer(const problems::Bank& bank, QuestionScreen& screen, QuestionFrame& frame);

/// The question's own part of a column, from `pen` on: what is asked, the answer, how it was marked
/// and the steps.
void draw_question(const Style& style, const problems::Bank& bank, ColumnPen& pen,
                   QuestionScreen& screen, QuestionFrame& frame);

/// Its drawing; takes the pointer first, so that it shows where a drag is now.
/// @param top_px  the stage begins so far down
void draw_question_stage(const Style& style, const Layout& layout, double top_px,
                         const StagePointer& pointer, QuestionScreen& screen, QuestionFrame& frame);

/// All of these: runs one frame of a question that has the stage and the column for itself. A
/// question must be open.
QuestionFrame run_question(const Style& style, const Layout& layout, const problems::Bank& bank,
                           const FrameInput& input, QuestionScreen& screen);

} // namespace steelyard::app
