#include "app/workshop/draft_model.h"

#include <algorithm>
#include <utility>

namespace steelyard::app {

namespace {

using lesson::LessonStep;
using lesson::PredictionKind;

bool is_shipped(const std::string& name) {
    std::error_code failed;
    const std::string file = name + std::string(setup::kSetupEnding);
    const auto folders = lesson::setup_folders({});
    return std::any_of(folders.begin(), folders.end(), [&](const auto& folder) {
        return std::filesystem::is_regular_file(folder / file, failed);
    });
}

/// The step with all that it has from the step before, or from a file of its author's, in itself.
LessonStep independent(LessonStep step) {
    const bool plain =
        !step.setup_name.empty() && step.changes.empty() && is_shipped(step.setup_name);
    if (!plain) {
        step.setup_name.clear();
        step.own = step.stage.setup;
        step.changes.clear();
    }
    if (const auto* body = std::get_if<setup::BodySetup>(&step.stage.setup)) {
        step.progress = step.stage.progress;
        step.axis = std::string(mechanics::hinge_info(body->axes[step.stage.axis]).name);
        step.view = step.stage.view;
    }
    return step;
}

LessonStep step_of(const lesson::LessonStage& stage) {
    LessonStep step;
    step.stage = stage;
    step.own = stage.setup;
    step.title = setup::head_of(stage.setup).name;
    step.prompt = "What do you expect?";
    return independent(std::move(step));
}

std::string joined_lines(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines)
        text += (text.empty() ? "" : "\n") + line;
    return text;
}

/// Lines that say something; blank ones are left out.
std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        std::string line = text.substr(at, end - at);
        if (line.find_first_not_of(" \t") != std::string::npos)
            lines.push_back(std::move(line));
        at = end + 1;
    }
    return lines;
}

/// Finds out whether the lesson could be shown: by reading what would be kept, so that what is
/// said here is what a reader of the file would be told.
void judge(DraftModel& draft) {
    draft.fault.clear();
    if (draft.state.lesson.steps.empty())
        return;
    const auto read = lesson::parse_lesson(lesson::write_lesson(draft.state.lesson), "this lesson",
                                           lesson::setup_folders({}));
    if (read)
        return;
    setup::InputError error = read.error();
    error.line = 0; // of a file that its author has not seen
    error.column = 0;
    draft.fault = setup::to_text(error);
}

void put(DraftModel& draft, DraftState next, int gesture) {
    draft.history.before_change(draft.state, gesture);
    draft.state = std::move(next);
    judge(draft);
}

/// The text that a field shows; null where there is none. State may be const.
template <typename State>
auto field_of(State& state, DraftField field) -> decltype(&state.lesson.head.name) {
    auto& lesson = state.lesson;
    switch (field) {
    case DraftField::name:
        return &lesson.head.name;
    case DraftField::description:
        return &lesson.head.description;
    case DraftField::lesson_note:
        return &lesson.head.note;
    default:
        break;
    }
    if (!state.has_step())
        return nullptr;
    auto& step = lesson.steps[state.chosen];
    switch (field) {
    case DraftField::title:
        return &step.title;
    case DraftField::prompt:
        return &step.prompt;
    case DraftField::answer:
        return &step.prediction.answer;
    case DraftField::reveal:
        return &step.reveal;
    case DraftField::key:
        return &step.key;
    case DraftField::note:
        return &step.note;
    default:
        return nullptr;
    }
}

void apply(DraftModel& draft, const AddStep& intent) {
    DraftState next = draft.state;
    auto& steps = next.lesson.steps;
    const std::size_t at = steps.empty() ? 0 : next.chosen + 1;
    steps.insert(steps.begin() + static_cast<std::ptrdiff_t>(at), step_of(intent.stage));
    next.chosen = at;
    put(draft, std::move(next), 0);
}

void apply(DraftModel& draft, const DeleteStep& /*intent*/) {
    if (!draft.state.has_step())
        return;
    DraftState next = draft.state;
    auto& steps = next.lesson.steps;
    steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(next.chosen));
    next.chosen = std::min(next.chosen, steps.empty() ? 0 : steps.size() - 1);
    put(draft, std::move(next), 0);
}

void apply(DraftModel& draft, const MoveStep& intent) {
    const auto to = static_cast<std::ptrdiff_t>(draft.state.chosen) + intent.by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(draft.state.lesson.steps.size()))
        return;
    DraftState next = draft.state;
    std::swap(next.lesson.steps[next.chosen], next.lesson.steps[static_cast<std::size_t>(to)]);
    next.chosen = static_cast<std::size_t>(to);
    put(draft, std::move(next), 0);
}

void apply(DraftModel& draft, const ChooseStep& intent) {
    if (intent.index < draft.state.lesson.steps.size())
        draft.state.chosen = intent.index; // looking elsewhere is no change to take back
}

void apply(DraftModel& draft, const SetDraftText& intent) {
    if (text_of(draft.state, intent.field) == intent.text)
        return;
    DraftState next = draft.state;
    if (intent.field == DraftField::choices && next.has_step())
        next.lesson.steps[next.chosen].prediction.choices = lines_of(intent.text);
    else if (std::string* text = field_of(next, intent.field))
        *text = intent.text;
    else
        return;
    put(draft, std::move(next), intent.gesture);
}

void apply(DraftModel& draft, const SetPrediction& intent) {
    if (!draft.state.has_step() || draft.state.step().prediction.kind == intent.kind)
        return;
    DraftState next = draft.state;
    LessonStep& step = next.lesson.steps[next.chosen];
    lesson::Prediction& prediction = step.prediction;
    if (step.key == prediction.of)
        step.key.clear();
    prediction.kind = intent.kind;
    prediction.of.clear();
    if (intent.kind == PredictionKind::number) {
        const bool lever = std::holds_alternative<setup::LeverSetup>(step.stage.setup);
        prediction.of = step.key = lever ? "effort" : "torque";
    }
    const bool has_answers =
        intent.kind == PredictionKind::choice || intent.kind == PredictionKind::hands;
    if (has_answers && prediction.choices.empty())
        prediction.choices = {"more", "less", "the same"};
    put(draft, std::move(next), 0);
}

void apply(DraftModel& draft, const SetSought& intent) {
    if (!draft.state.has_step())
        return;
    DraftState next = draft.state;
    LessonStep& step = next.lesson.steps[next.chosen];
    step.key = step.key == intent.quantity && step.prediction.of.empty() ? "" : intent.quantity;
    if (step.prediction.kind == PredictionKind::number)
        step.prediction.of = intent.quantity;
    put(draft, std::move(next), 0);
}

void apply(DraftModel& draft, const TurnHidden& intent) {
    if (!draft.state.has_step())
        return;
    DraftState next = draft.state;
    LessonStep& step = next.lesson.steps[next.chosen];
    lesson::StageMarks marks = step.hide.value_or(lesson::hidden_marks(step));
    if (marks.erase(intent.mark) == 0)
        marks.insert(intent.mark);
    step.hide = marks;
    put(draft, std::move(next), 0);
}

void apply(DraftModel& draft, const UndoDraft& /*intent*/) {
    if (draft.history.can_undo())
        draft.state = draft.history.undo(draft.state);
    judge(draft);
}

void apply(DraftModel& draft, const RedoDraft& /*intent*/) {
    if (draft.history.can_redo())
        draft.state = draft.history.redo(draft.state);
    judge(draft);
}

} // namespace

DraftModel new_draft(const std::filesystem::path& path) {
    DraftModel draft;
    draft.path = path;
    draft.state.lesson.head.name = "My lesson";
    draft.state.lesson.head.description = "What it shows, in a sentence.";
    return draft;
}

DraftModel draft_of(lesson::Lesson lesson, const std::filesystem::path& path) {
    DraftModel draft;
    draft.path = path;
    draft.state.lesson = std::move(lesson);
    for (LessonStep& step : draft.state.lesson.steps)
        step = independent(std::move(step));
    judge(draft);
    return draft;
}

std::string text_of(const DraftState& state, DraftField field) {
    if (field == DraftField::choices)
        return state.has_step() ? joined_lines(state.step().prediction.choices) : std::string();
    const std::string* text = field_of(state, field);
    return text != nullptr ? *text : std::string();
}

void update(DraftModel& draft, const DraftIntent& intent) {
    std::visit([&](const auto& one) { apply(draft, one); }, intent);
}

} // namespace steelyard::app
