#include "app/place/body_place.h"

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
    open_exercise(*body_, first);
    if (last)
        update(body_->model, Scrub{last->progress});
}

void BodyPlace::refit() {
    if (body_)
        body_->stage_fits = false;
    shelf_.cards_width_px = 0.0;
}

void BodyPlace::show(const setup::Setup& setup, Surroundings& around) {
    enter(around);
    const auto* exercise = std::get_if<setup::BodySetup>(&setup);
    if (exercise != nullptr && body_)
        open_exercise(*body_, *exercise);
}

std::optional<setup::Setup> BodyPlace::shown() const {
    if (!body_)
        return std::nullopt;
    return body_->model.state.setup;
}

std::optional<setup::LessonStage> BodyPlace::stage() const {
    if (!body_)
        return std::nullopt;
    const BodyState& state = body_->model.state;
    return setup::LessonStage{state.setup, body_->model.progress, state.chosen, state.setup.view};
}

void BodyPlace::tell(const std::string& sentence) {
    (body_ ? body_->model.message : trouble_) = sentence;
}

std::string BodyPlace::keep(const SavedWork& saved) const {
    if (!body_)
        return {};
    return saved.save_body({body_->model.state.setup, body_->model.progress});
}

PlaceFrame BodyPlace::run(const PlaceInput& input) {
    if (shelf_.open)
        return run_shelf(input);
    if (!body_)
        return run_without_body(input);
    PlaceFrame frame;
    const setup::UnitSystem units = input.around.units;
    BodyOutcome outcome = run_body(input.style, input.layout, input.frame, units, *body_);
    frame.drawing = std::move(outcome.drawing);
    frame.changed = outcome.changed;
    return frame;
}

PlaceFrame BodyPlace::run_shelf(const PlaceInput& input) {
    const Shelf& exercises = input.around.library.exercises();
    const ShelfContent content{
        "Choose an exercise",
        [&](const scene::Point& size_px) { return body_cards(exercises, size_px); },
        &exercises.faults};
    PlaceFrame frame;
    const ShelfOutcome outcome =
        draw_shelf(input.style, content, input.window_px, *input.frame.keys, shelf_);
    frame.pictures = outcome.pictures;
    if (outcome.opened) {
        show(exercises.bodies[*outcome.opened], input.around);
        frame.changed = true;
    }
    return frame;
}

PlaceFrame BodyPlace::run_without_body(const PlaceInput& input) const {
    draw_paragraph(*ImGui::GetBackgroundDrawList(), input.style,
                   {scene::TextSize::body, false, scene::Role::wrong},
                   {24.0F, input.style.px(120.0F)},
                   static_cast<float>(input.layout.stage_px.x()) - 48.0F, trouble_);
    return {};
}

} // namespace steelyard::app
