#pragma once
// A lesson that is being made: its steps, and what can be done with them. No window.

#include "app/history.h"
#include "lesson/lesson.h"
#include "mechanics/muscle/muscle.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace steelyard::app {

/// One state of the draft; undo goes back to earlier ones.
struct DraftState {
    lesson::Lesson lesson; ///< every step holds its own setup or names a shipped one
    std::size_t chosen = 0;

    bool has_step() const { return chosen < lesson.steps.size(); }
    const lesson::LessonStep& step() const { return lesson.steps[chosen]; }
};

struct DraftModel {
    DraftState state;
    History<DraftState> history;
    std::filesystem::path path; ///< where it is kept
    /// What keeps it from being shown, said for its author; empty when nothing does.
    std::string fault;
};

/// A new lesson without steps, to be kept in a file.
DraftModel new_draft(const std::filesystem::path& path);

/// A lesson to be changed. Its steps are made independent of each other, so that they can be moved
/// and taken out one by one.
DraftModel draft_of(lesson::Lesson lesson, const std::filesystem::path& path);

/// The texts of a draft, for fields.
enum class DraftField {
    name,
    description,
    lesson_note,
    title,
    prompt,
    choices,
    answer,
    reveal,
    key,
    note
};

/// The text of a field now; choices are a line each.
std::string text_of(const DraftState& state, DraftField field);

// --- intents -------------------------------------------------------------------------------------

/// Puts a stage as a new step behind the chosen one.
struct AddStep {
    lesson::LessonStage stage;
};
struct DeleteStep {};
/// Moves the chosen step up (-1) or down (+1).
struct MoveStep {
    int by = 1;
};
struct ChooseStep {
    std::size_t index = 0;
};
/// Sets a text; changes of the same gesture (not 0) are undone together.
struct SetDraftText {
    DraftField field = DraftField::prompt;
    std::string text;
    int gesture = 0;
};
struct SetPrediction {
    lesson::PredictionKind kind = lesson::PredictionKind::none;
};
/// The quantity that is asked for, and stands large at the reveal.
struct SetSought {
    std::string quantity;
};
/// Hides a mark until the reveal, or shows it from the beginning.
struct TurnHidden {
    lesson::StageMark mark = lesson::StageMark::effort;
};
struct UndoDraft {};
struct RedoDraft {};

using DraftIntent = std::variant<AddStep, DeleteStep, MoveStep, ChooseStep, SetDraftText,
                                 SetPrediction, SetSought, TurnHidden, UndoDraft, RedoDraft>;

void update(DraftModel& draft, const DraftIntent& intent);

} // namespace steelyard::app
