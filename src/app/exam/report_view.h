#pragma once
// The report of a finished mock exam: how it went by skill and by wrong rule, and every question
// again with its worked steps.

#include "app/frame/frame_input.h"
#include "app/practice/desk.h"
#include "app/question/question_screen.h"

#include <optional>
#include <string>

namespace steelyard::app {

struct ReportScreen {
    learner::ExamReport report;
    std::string foreseen;             ///< empty when nothing was
    std::optional<std::size_t> shown; ///< index of the mark whose worked steps are open
    QuestionScreen question;          ///< of it
};

struct ExamFrame {
    bool left = false;
    scene::Drawing drawing;
};

/// "Passed: 29 of 40 right in 41:07 of 60 minutes; 28 needed."
std::string result_text(const learner::Exam& exam, const learner::ExamReport& report);

/// Opens a mark's question with what was answered.
void open_mark(ReportScreen& screen, const learner::Exam& exam, std::size_t mark);

/// Runs one frame. Keys: left and right go through the questions, N through the mistakes, Escape
/// leads back.
ExamFrame run_report(const Style& style, const Layout& layout, const Desk& desk,
                     const learner::Exam& exam, const FrameInput& input, ReportScreen& screen);

} // namespace steelyard::app
