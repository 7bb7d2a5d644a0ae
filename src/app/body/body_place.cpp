#include "app/body/body_place.h"

namespace steelyard::app {

void BodyPlace::enter(Surroundings& around) {
    if (body_)
        return;
    const ExerciseShelf& exercises = around.library.exercises();
    const auto& muscles = around.library.muscles();
    const std::optional<SavedBody> last = around.saved.load_body();
    if (!muscles || (exercises.setups.empty() && !last)) {
        trouble_ = muscles ? "There are no exercises to show." : muscles.error();
        return;
    }
    const setup::BodySetup& first = last ? last->setup : exercises.setups.front().setup;
    kept_ = last ? last->kept : KeptAs{{}, setup::write_body_setup(first)};
    body_ = BodyScreen{};
    body_->model = make_body(first, *muscles, around.library.segment_tables());
    for (const Shelved<setup::BodySetup>& stance : around.library.stances().setups)
        body_->stances.push_back(stance.setup);
    body_->folder = SavedWork::usual_folder();
    body_->tools = around.tools;
    open_exercise(*body_, first);
    if (last)
        update(body_->model, Scrub{last->progress});
}

void BodyPlace::refit() {
    if (body_)
        body_->stage_fits = false;
}

void BodyPlace::open(const OpenedFile& file, Surroundings& around) {
    enter(around);
    const auto& exercise = std::get<setup::BodySetup>(std::get<setup::Setup>(file));
    if (body_)
        put({exercise, Origin::shipped, around.library.own().file_at(exercise.source.file)});
}

void BodyPlace::put(const Shelved<setup::BodySetup>& exercise) {
    leave_behind(body_->model.state.setup, kept_, shelf_);
    kept_ = kept_as_shelved(exercise);
    open_exercise(*body_, exercise.setup);
}

std::optional<setup::Setup> BodyPlace::to_keep() const {
    return body_ ? std::optional<setup::Setup>(body_->model.state.setup) : std::nullopt;
}

void BodyPlace::was_kept(const std::string& name, const OwnFile& file) {
    update(body_->model, NameExercise{name});
    kept_ = {file, file.text};
}

std::optional<lesson::LessonStage> BodyPlace::stage() const {
    if (!body_)
        return std::nullopt;
    const BodyState& state = body_->model.state;
    return lesson::LessonStage{state.setup, body_->model.progress, state.chosen, state.setup.view};
}

std::string BodyPlace::keep(const SavedWork& saved) const {
    if (!body_)
        return {};
    return saved.save_body({body_->model.state.setup, body_->model.progress, kept_});
}

/// A stance as an exercise to begin with: nothing carried, nothing moved.
void BodyPlace::begin_with(const setup::BodySetup& stance) {
    setup::BodySetup fresh = stance;
    fresh.head.name = "New exercise";
    fresh.head.description.clear();
    fresh.source = {};
    put({fresh});
    body_->face = ColumnFace::make;
}

PlaceFrame BodyPlace::run(const PlaceInput& input) {
    if (stances_.open)
        return run_stances(input, stances_,
                           [&](const setup::BodySetup& stance) { begin_with(stance); });
    if (shelf_.state.open)
        return run_shelf(input, "Choose an exercise",
                         {"New exercise", [&] { app::open_shelf(stances_); }}, shelf_,
                         [&](const Shelved<setup::BodySetup>& one) { put(one); });
    PlaceFrame frame;
    if (!body_) {
        draw_trouble(input, trouble_);
        return frame;
    }
    const setup::UnitSystem units = input.around.units;
    const BodyFrame result = run_body(input.style, input.layout, input.frame, units, *body_);
    frame.kept = result.drawing;
    frame.changed = result.changed;
    if (result.lever)
        frame.wish = ShowSetup{*result.lever};
    return frame;
}

} // namespace steelyard::app
