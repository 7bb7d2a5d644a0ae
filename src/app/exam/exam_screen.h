#pragma once
// A mock exam in the window: the beam of questions, the clock, and its report at the end.

#include "app/exam/beam_layout.h"
#include "app/exam/exam_model.h"
#include "app/exam/report_view.h"
#include "app/practice/desk.h"
#include "app/question/question_screen.h"

#include <optional>
#include <string>

namespace steelyard::app {

struct ExamScreen {
    ExamModel model;
    QuestionScreen question; ///< mirrors the model's question
    BeamPointer pointer;     ///< over the question on the screen
    bool less_motion = false;
    std::optional<ReportScreen> report;
    learner::TimeMs kept_ms = 0; ///< when the exam was kept last
    bool begun = false;          ///< false: what an exam is stands on the screen, no clock runs
    std::string trouble;
};

/// Goes on with the exam that was begun, else offers a new one.
void open_exam(ExamScreen& screen, Desk& desk, std::uint64_t seed, const learner::Clock& now);

/// Seconds until the clock on the screen shows another number or has to be kept; empty while none
/// runs.
std::optional<double> next_tick_s(const ExamScreen& screen);

/// Whether frames are owed: the pointer is on its way.
bool is_moving(const ExamScreen& screen);

/// Runs one frame. Keys: Enter keeps the answer and goes on; Page Up and Page Down go back and
/// forth, with Shift to the next question to come back to; M hangs a weight below this one, to come
/// back to it, or takes it off; Ctrl+E asks to end, Escape leaves it waiting. In the answer line
/// every letter is a letter: there Ctrl+M hangs the weight.
ExamFrame run_exam(const Style& style, const Layout& layout, Desk& desk, const learner::Clock& now,
                   const FrameInput& input, ExamScreen& screen);

} // namespace steelyard::app
