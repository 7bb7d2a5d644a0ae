#include "app/body/body_place.h"

#include "app/place/place_parts.h"

namespace steelyard::app {

void BodyPlace::enter(Surroundings& around) {
    if (body_)
        return;
    const Shelf& exercises = around.library.exercises();
    const auto& muscles = around.library.muscles();
    const std::optional<SavedBody> last = around.saved.load_body();
    if (!muscles || (exercises.bodies.empty() && !last)) {
        trouble_ = muscles ? "There are no exercises to show." : muscles.error();
        return;
    }
    const setup::BodySetup& first = last ? last->setup : exercises.bodies.front();
    body_ = BodyScreen{};
    body_->model = make_body(first, *muscles);
    body_->folder = SavedWork::usual_folder();
    body_->tools = around.tools;
    open_exercise(*body_, first);
    if (last)
        update(body_->model, Scrub{last->progress});
}

void BodyPlace::refit() {
    if (body_)
        body_->stage_fits = false;
    shelf_.cards_width_px = 0.0;
}

void BodyPlace::open(const OpenedFile& file, Surroundings& around) {
    enter(around);
    if (body_)
        open_exercise(*body_, std::get<setup::BodySetup>(std::get<setup::Setup>(file)));
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
    return saved.save_body({body_->model.state.setup, body_->model.progress});
}

PlaceFrame BodyPlace::run(const PlaceInput& input) {
    if (shelf_.open) {
        const Shelf& exercises = input.around.library.exercises();
        return run_shelf(
            input, exercise_content("Choose an exercise", exercises), shelf_,
            [&](std::size_t chosen) { open_exercise(*body_, exercises.bodies[chosen]); });
    }
    PlaceFrame frame;
    if (!body_) {
        draw_trouble(input, trouble_);
        return frame;
    }
    const setup::UnitSystem units = input.around.units;
    const BodyFrame result = run_body(input.style, input.layout, input.frame, units, *body_);
    frame.kept = result.drawing;
    frame.changed = result.changed;
    return frame;
}

} // namespace steelyard::app
