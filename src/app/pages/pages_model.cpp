#include "app/pages/pages_model.h"

#include "lesson/lesson_change.h"
#include "setup/body/body_names.h"
#include "words/body/body_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace steelyard::app {

namespace {

using lesson::LessonMove;
using lesson::PredictionKind;

/// "place", "direction", ...: what a key of a change is called.
std::string word_of_key(const std::string& key) {
    if (key == "at")
        return "place";
    if (key == "slack_length")
        return "slack length";
    if (key == "up")
        return "height of the pulley";
    if (key == "forward")
        return "distance of the pulley";
    if (key == "right")
        return "pulley to the right";
    return key;
}

/// What is moved: "place of the effort", "elbow flexion", "the way through the repetition".
std::string name_of_move(const LessonMove& move) {
    if (move.part == lesson::kProgress)
        return "the way through the movement";
    if (const auto hinges = setup::hinges_named(move.part); !hinges.empty())
        return words::joint_word(hinges.front()) + " " + words::movement_word(hinges.front());
    const bool is_named = move.part != "effort" && move.part != "axis" && move.part != "own weight";
    return fmt::format("{} of {}{}", word_of_key(move.key), is_named ? "" : "the ", move.part);
}

std::string value_text(const LessonMove& move, double value_SI, setup::UnitSystem units) {
    if (move.part == lesson::kProgress)
        return fmt::format("{:.0f} %", 100.0 * value_SI);
    return setup::format_quantity(value_SI, lesson::dimension_of(move.key), units);
}

lesson::SolvedStage solved_stage(const lesson::LessonStage& stage) {
    auto solved = lesson::solve_stage(stage);
    assert(solved); // pages that were read can be solved at every place
    return std::move(*solved);
}

std::string filled(const std::string& text, const lesson::QuantitySource& source,
                   setup::UnitSystem units) {
    return lesson::filled_text(text, source, units).value_or("");
}

} // namespace

bool PagesModel::is_open() const {
    return step().prediction.kind == PredictionKind::none || now().guessed.has_value();
}

std::filesystem::path pages_file(const std::filesystem::path& assets, const std::string& skill_id) {
    return assets / "pages" / (skill_id + std::string(lesson::kLessonEnding));
}

tl::expected<PagesModel, setup::InputError> open_pages(const std::filesystem::path& file,
                                                       std::vector<mechanics::Muscle> muscles,
                                                       setup::UnitSystem units) {
    auto read = lesson::read_lesson(file);
    if (!read)
        return tl::make_unexpected(read.error());
    PagesModel model;
    model.lesson = *std::move(read);
    model.muscles = std::move(muscles);
    model.units = units;
    for (const lesson::LessonStep& step : model.lesson.steps) {
        PageProgress progress;
        if (step.move)
            progress.share = lesson::share_now(step.stage, *step.move).value_or(0.0);
        model.progress.push_back(progress);
    }
    return model;
}

void guess(PagesModel& model, std::size_t choice) {
    if (!model.now().guessed && choice < model.step().prediction.choices.size())
        model.progress[model.page].guessed = choice;
}

void move_to(PagesModel& model, double share) {
    if (!model.is_open() || !model.step().move)
        return;
    model.progress[model.page].share = std::clamp(share, 0.0, 1.0);
    model.progress[model.page].moved = true;
}

bool turn_on(PagesModel& model) {
    if (!model.is_open())
        return true;
    if (model.at_end())
        return false;
    ++model.page;
    return true;
}

void turn_back(PagesModel& model) {
    if (model.page > 0)
        --model.page;
}

void view_page(const PagesModel& model, PageView& view) {
    const lesson::LessonStep& step = model.step();
    const lesson::SolvedStage own = solved_stage(step.stage);
    std::optional<lesson::SolvedStage> before;
    if (model.page > 0)
        before = solved_stage(model.lesson.steps[model.page - 1].stage);
    const lesson::SolvedStage* earlier = before ? &*before : nullptr;
    const lesson::QuantitySource source{&own, earlier, &model.muscles};
    view.prompt = filled(step.prompt, source, model.units);
    view.choices.clear();
    for (const std::string& choice : step.prediction.choices)
        view.choices.push_back(filled(choice, source, model.units));
    view.stage = step.stage;
    view.shows.clear();
    view.right.reset();
    view.reveal.clear();
    if (model.is_open()) {
        view.reveal = filled(step.reveal, source, model.units);
        view.right =
            lesson::right_choice(step.prediction, source, model.units).value_or(std::nullopt);
    }
    if (step.move && model.now().moved)
        if (auto moved = lesson::moved_stage(step.stage, *step.move, model.now().share))
            view.stage = *std::move(moved);
    view.solved = solved_stage(view.stage);
    if (!step.move || !model.is_open())
        return;
    view.moved_name = name_of_move(*step.move);
    view.moved_value =
        value_text(*step.move, lesson::value_at(*step.move, model.now().share), model.units);
    const lesson::QuantitySource moving{&view.solved, earlier, &model.muscles};
    for (const std::string& name : step.move->shows)
        if (const auto quantity = lesson::read_quantity(name, moving)) {
            const setup::QuantityText text = lesson::quantity_text(*quantity, model.units);
            view.shows.push_back({lesson::spoken_name(name, moving),
                                  text.unit.empty() ? text.number : text.number + " " + text.unit});
        }
}

} // namespace steelyard::app
