#include "app/side_by_side/side_by_side_place.h"

#include "app/place/place_parts.h"

#include <algorithm>

namespace steelyard::app {

namespace {

/// The pair that explains the place at first sight: one lift, and the bar a hand's breadth farther
/// out.
constexpr const char* kFirstPair[] = {"hinge-bar-near", "hinge-bar-drifting"};

/// The same for levers: both carry on a wheel, one with the load far nearer to it.
constexpr const char* kFirstLevers[] = {"launch-trolley", "wheelbarrow"};

/// A shipped setup by the name of its file; the first of the shelf when it is not there.
template <typename Kind> const Kind& shipped(const Shelf<Kind>& shelf, const std::string& name) {
    const std::string file = name + std::string(setup::kSetupEnding);
    const auto found =
        std::find_if(shelf.setups.begin(), shelf.setups.end(), [&](const Shelved<Kind>& one) {
            return std::filesystem::path(one.setup.source.file).filename() == file;
        });
    return (found == shelf.setups.end() ? shelf.setups.front() : *found).setup;
}

} // namespace

void SideBySidePlace::enter(Surroundings& around) {
    if (pair_)
        return;
    const auto& known = around.library.muscles();
    std::vector<mechanics::Muscle> muscles; // without them the pair stands without its muscles
    if (known)
        muscles = *known;
    if (const std::optional<SavedPair> last = around.saved.load_pair()) {
        pair_ = open_side_by_side(last->a, last->b, std::move(muscles));
        update(pair_->model, ScrubBoth{last->progress});
        if (last->levers) {
            levers_.emplace().model = make_lever_pair(last->levers->a, last->levers->b);
            wants_levers_ = last->shows_levers;
        }
        return;
    }
    const ExerciseShelf& exercises = around.library.exercises();
    if (exercises.setups.empty()) {
        trouble_ = "There are no exercises to show.";
        return;
    }
    pair_ = open_side_by_side(shipped(exercises, kFirstPair[0]), shipped(exercises, kFirstPair[1]),
                              std::move(muscles));
}

void SideBySidePlace::refit() {
    if (pair_)
        pair_->stages_fit = false;
    if (levers_)
        levers_->views_fit = false;
}

void SideBySidePlace::undo() {
    if (shows_levers())
        update(levers_->model, UndoLevers{});
    else
        update(pair_->model, UndoCompared{});
    refit();
}

void SideBySidePlace::redo() {
    if (shows_levers())
        update(levers_->model, RedoLevers{});
    else
        update(pair_->model, RedoCompared{});
    refit();
}

void SideBySidePlace::put(Side side, const setup::BodySetup& setup) {
    update(pair_->model, PutSide{side, setup});
    pair_->eased.reset();
    pair_->playing = false;
    refit();
}

void SideBySidePlace::put(Side side, const setup::LeverSetup& setup) {
    update(levers_->model, PutLever{side, setup});
    refit();
}

void SideBySidePlace::take_up(const lesson::LessonStage& stage, Surroundings& around) {
    enter(around);
    if (const auto* lever = std::get_if<setup::LeverSetup>(&stage.setup)) {
        show_levers(around);
        if (levers_)
            put(Side::a, *lever);
        return;
    }
    wants_levers_ = false;
    const auto* exercise = std::get_if<setup::BodySetup>(&stage.setup);
    if (exercise != nullptr && pair_)
        put(Side::a, *exercise);
}

std::string SideBySidePlace::keep(const SavedWork& saved) const {
    if (!pair_)
        return {};
    const SideBySideModel& model = pair_->model;
    SavedPair pair{model.state.a, model.state.b, model.progress, {}, shows_levers()};
    if (levers_)
        pair.levers = SavedLevers{levers_->model.state.a, levers_->model.state.b};
    return saved.save_pair(pair);
}

/// Turns to levers; the first time two of the shelf are put up.
void SideBySidePlace::show_levers(Surroundings& around) {
    wants_levers_ = true;
    const LeverShelf& shelf = around.library.levers();
    if (levers_ || shelf.setups.empty())
        return;
    levers_.emplace().model =
        make_lever_pair(shipped(shelf, kFirstLevers[0]), shipped(shelf, kFirstLevers[1]));
}

void SideBySidePlace::choose(Side side) {
    chosen_for_ = side;
    app::open_shelf(shows_levers() ? lever_shelf_.state : exercise_shelf_.state);
}

PlaceFrame SideBySidePlace::run(const PlaceInput& input) {
    if (chooses())
        return run_choosing(input);
    PlaceFrame frame;
    if (!pair_ && !shows_levers()) {
        draw_trouble(input, trouble_);
        return frame;
    }
    SideBySideFrame result = run_pair(input);
    frame.drawing = std::move(result.drawing);
    frame.changed = result.changed;
    switch (result.wish) {
    case SideBySideWish::none:
        break;
    case SideBySideWish::choose_a:
    case SideBySideWish::choose_b:
        choose(result.wish == SideBySideWish::choose_a ? Side::a : Side::b);
        break;
    case SideBySideWish::take_stage:
        frame.wish = BringFrom{shows_levers() ? PlaceName::bench : PlaceName::body};
        break;
    case SideBySideWish::other_kind:
        if (shows_levers())
            wants_levers_ = false;
        else
            show_levers(input.around);
        frame.changed = true; // which kind is compared is kept too
        break;
    }
    return frame;
}

SideBySideFrame SideBySidePlace::run_pair(const PlaceInput& input) {
    if (shows_levers()) {
        levers_->less_motion = input.around.less_motion;
        return run_lever_pair(input.style, input.layout, input.frame, input.around.units, *levers_);
    }
    pair_->less_motion = input.around.less_motion;
    return run_side_by_side(input.style, input.layout, input.frame, input.around.units, *pair_);
}

PlaceFrame SideBySidePlace::run_choosing(const PlaceInput& input) {
    const std::string side = chosen_for_ == Side::a ? " for A" : " for B";
    if (lever_shelf_.state.open)
        return run_shelf(
            input, "Choose a lever" + side, {}, lever_shelf_,
            [&](const Shelved<setup::LeverSetup>& one) { put(chosen_for_, one.setup); });
    return run_shelf(input, "Choose an exercise" + side, {}, exercise_shelf_,
                     [&](const Shelved<setup::BodySetup>& one) { put(chosen_for_, one.setup); });
}

} // namespace steelyard::app
