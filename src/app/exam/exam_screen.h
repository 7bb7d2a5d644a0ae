#pragma once
// A mock exam in the window: the strip of questions, the clock, and its report at the end.

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
    std::optional<ReportScreen> report;
    learner::TimeMs kept_ms = 0; ///< when the exam was kept last
    bool begun = false;          ///< false: what an exam is stands on the screen, no clock runs
    std::string trouble;
};

/// Goes on with the exam that was begun, else offers a new one.
void open_exam(ExamScreen& screen, Desk& desk, std::uint64_t seed, const learner::Clock& now);

/// Seconds until the clock on the screen shows another number; empty while none runs.
std::optional<double> next_tick_s(const ExamScreen& screen);

/// Runs one frame. Keys: Enter keeps the answer and goes on; Page Up and Page Down go back and
/// forth, F flags, Ctrl+E asks to end, Escape leaves it waiting. In the answer line f, e, n and p
/// with Enter do the same, as in the terminal.
ExamOutcome run_exam(const Style& style, const Layout& layout, Desk& desk,
                     const learner::Clock& now, const FrameInput& input, ExamScreen& screen);

} // namespace steelyard::app
