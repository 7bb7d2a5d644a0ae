#include "app/place/side_by_side_place.h"

#include <algorithm>

namespace steelyard::app {

namespace {

/// The pair that explains the place at first sight: one lift, and the bar a hand's breadth farther
/// out.
constexpr const char* kFirstPair[] = {"hinge-bar-near", "hinge-bar-drifting"};

/// A shipped exercise by the name of its file; the first of the shelf when it is not there.
const setup::BodySetup& shipped(const Shelf& exercises, const std::string& name) {
    const std::string file = name + std::string(setup::kSetupEnding);
    const auto found = std::find_if(
        exercises.bodies.begin(), exercises.bodies.end(), [&](const setup::BodySetup& one) {
            return std::filesystem::path(one.source.file).filename() == file;
        });
    return found == exercises.bodies.end() ? exercises.bodies.front() : *found;
}

} // namespace

void SideBySidePlace::enter(Surroundings& around) {
    if (pair_)
        return;
    if (const std::optional<SavedPair> last = around.saved.load_pair()) {
        pair_ = open_side_by_side(last->a, last->b);
        update(pair_->model, ScrubBoth{last->progress});
        return;
    }
    const Shelf& exercises = around.library.exercises();
    if (exercises.bodies.empty()) {
        trouble_ = "There are no exercises to show.";
        return;
    }
    pair_ = open_side_by_side(shipped(exercises, kFirstPair[0]), shipped(exercises, kFirstPair[1]));
}

void SideBySidePlace::refit() {
    if (pair_)
        pair_->stages_fit = false;
    shelf_.cards_width_px = 0.0;
}

void SideBySidePlace::undo() {
    update(pair_->model, UndoCompared{});
    refit();
}

void SideBySidePlace::redo() {
    update(pair_->model, RedoCompared{});
    refit();
}

void SideBySidePlace::put(Side side, const setup::BodySetup& setup) {
    update(pair_->model, PutSide{side, setup});
    pair_->eased.reset();
    pair_->playing = false;
    refit();
}

void SideBySidePlace::show(const setup::Setup& setup, Surroundings& around) {
    enter(around);
    const auto* exercise = std::get_if<setup::BodySetup>(&setup);
    if (exercise != nullptr && pair_)
        put(Side::a, *exercise);
}

void SideBySidePlace::tell(std::string sentence) {
    (pair_ ? pair_->model.message : trouble_) = std::move(sentence);
}

std::string SideBySidePlace::keep(const SavedWork& saved) const {
    if (!pair_)
        return {};
    const SideBySideModel& model = pair_->model;
    return saved.save_pair({model.state.a, model.state.b, model.progress});
}

void SideBySidePlace::choose(Side side) {
    chosen_for_ = side;
    app::open_shelf(shelf_);
}

PlaceFrame SideBySidePlace::run(const PlaceInput& input) {
    if (shelf_.open)
        return run_shelf(input);
    PlaceFrame frame;
    if (!pair_) {
        draw_paragraph(*ImGui::GetBackgroundDrawList(), input.style,
                       {scene::TextSize::body, false, scene::Role::wrong},
                       {24.0F, input.style.px(120.0F)},
                       static_cast<float>(input.layout.stage_px.x()) - 48.0F, trouble_);
        return frame;
    }
    pair_->less_motion = input.around.less_motion;
    SideBySideOutcome outcome =
        run_side_by_side(input.style, input.layout, input.frame, input.around.units, *pair_);
    frame.drawing = std::move(outcome.drawing);
    frame.changed = outcome.changed;
    if (outcome.wish == SideBySideWish::take_body)
        frame.errand = BringFrom{PlaceName::body};
    else if (outcome.wish != SideBySideWish::none)
        choose(outcome.wish == SideBySideWish::choose_a ? Side::a : Side::b);
    return frame;
}

PlaceFrame SideBySidePlace::run_shelf(const PlaceInput& input) {
    const Shelf& exercises = input.around.library.exercises();
    const ShelfContent content{
        chosen_for_ == Side::a ? "Choose an exercise for A" : "Choose an exercise for B",
        [&](const scene::Point& size_px) { return body_cards(exercises, size_px); },
        &exercises.faults};
    PlaceFrame frame;
    const ShelfOutcome outcome =
        draw_shelf(input.style, content, input.window_px, *input.frame.keys, shelf_);
    frame.pictures = outcome.pictures;
    if (outcome.opened) {
        put(chosen_for_, exercises.bodies[*outcome.opened]);
        frame.changed = true;
    }
    return frame;
}

} // namespace steelyard::app
