#pragma once
// Where a learner stands: the staircase on the stage, readiness and the last answers in the column.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/practice/desk.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

struct ProgressScreen {
    std::size_t chosen = 0; ///< step
    std::vector<learner::RuleTimes> rules;
    std::vector<learner::ExamResult> exams;
    std::vector<learner::Answer> answers;
    std::string remark;   ///< what came of an export
    bool at_foot = false; ///< the foot of the staircase was brought to sight
};

/// Reads what is shown besides the standing; once, not in every frame.
void open_progress(ProgressScreen& screen, Desk& desk);

struct ProgressFrame {
    bool left = false;
    std::optional<std::size_t> practise;   ///< a skill by its index
    std::optional<std::size_t> explain;    ///< a skill whose pages are asked for
    std::optional<learner::Answer> reopen; ///< a past answer to be looked at
    bool redo_mistakes = false;
    bool redo_marked = false;
    scene::Drawing drawing;
};

/// Runs one frame. Keys: arrows choose a step, Enter practises it, E explains it, R redoes
/// mistakes, M what was marked, O opens the last answer, X exports, Escape leaves.
ProgressFrame run_progress(const Style& style, const Layout& layout, Desk& desk,
                           const learner::Clock& now, const FrameInput& input,
                           ProgressScreen& screen);

} // namespace steelyard::app
