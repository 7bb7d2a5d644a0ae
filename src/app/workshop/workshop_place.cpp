#include "app/workshop/workshop_place.h"

#include "app/platform/clock.h"
#include "app/platform/key.h"
#include "app/workshop/room_stage.h"
#include "app/workshop/show_keys.h"
#include "app/workshop/show_view.h"

#include <algorithm>

namespace steelyard::app {

void WorkshopPlace::enter(Surroundings& around) {
    message_.clear();
    read_shelf(around.library);
}

void WorkshopPlace::read_shelf(const Library& library) {
    shelf_ = read_lesson_shelf(library.data_folder() / "assets" / "lessons", own_lesson_folder());
    shelf_.lessons.insert(shelf_.lessons.begin(), opened_.begin(), opened_.end());
}

bool WorkshopPlace::claims(const KeyPress& key) const {
    if ((key.modifiers & key::kWithControl) != 0)
        return false;
    if (!show_)
        return draft_ && key.key == key::kEscape;
    return key.key != key::kD || !letters_are_commands(*show_);
}

PlaceShape WorkshopPlace::shape(const scene::Point& window_px) const {
    PlaceShape shape{show_.has_value(), false, std::nullopt};
    if (show_)
        shape.type_scale = room_type_scale(window_px.y());
    return shape;
}

void WorkshopPlace::open(const OpenedFile& file, Surroundings& around) {
    const auto& [path, lesson] = std::get<LessonFile>(file);
    show_.reset();
    if (draft_)
        leave_draft(around);
    shelf_state_.chosen = put_on_shelf({lesson, path, LessonOrigin::opened}, opened_, shelf_);
    shelf_state_.scroll_to_chosen = true;
}

void WorkshopPlace::start(const lesson::Lesson& lesson, Surroundings& around, std::size_t step) {
    const auto& muscles = around.library.muscles();
    if (!muscles) {
        message_ = muscles.error();
        return;
    }
    message_.clear();
    show_ = make_show(lesson, *muscles, around.units);
    update(*show_, GoToStep{step});
    passed_at_s_ = now_s();
}

/// What is shown is what a reader of the kept file gets.
void WorkshopPlace::start_draft(Surroundings& around, std::size_t step) {
    if (draft_->state.lesson.steps.empty() || !draft_->fault.empty())
        return;
    const auto lesson = lesson::parse_lesson(lesson::write_lesson(draft_->state.lesson),
                                             draft_->path.string(), lesson::setup_folders({}));
    if (lesson)
        start(*lesson, around, step);
}

/// A shipped lesson is changed as a copy of one's own.
void WorkshopPlace::open_draft(std::size_t shelved) {
    const ShelvedLesson& one = shelf_.lessons[shelved];
    draft_ =
        draft_of(one.lesson, one.origin == LessonOrigin::own
                                 ? one.path
                                 : free_lesson_path(own_lesson_folder(), one.lesson.head.name));
    draft_ui_ = {};
}

void WorkshopPlace::leave_draft(Surroundings& around) {
    message_ = keep(around.saved);
    draft_.reset();
    read_shelf(around.library);
}

void WorkshopPlace::take_up(const lesson::LessonStage& stage, Surroundings& /*around*/) {
    if (draft_)
        update(*draft_, AddStep{stage});
}

std::string WorkshopPlace::keep(const SavedWork& /*saved*/) const {
    if (!draft_ || !draft_->history.can_undo() || !draft_->fault.empty() ||
        draft_->state.lesson.steps.empty())
        return {};
    return save_lesson(draft_->state.lesson, draft_->path);
}

void WorkshopPlace::pass_time() {
    const double now = now_s();
    if (show_)
        update(*show_, PassTime{now - passed_at_s_});
    passed_at_s_ = now;
}

PlaceFrame WorkshopPlace::run(const PlaceInput& input) {
    pass_time();
    if (show_)
        return run_show(input);
    return draft_ ? run_draft(input) : run_shelf(input);
}

/// Keys of both windows: a remote may talk to either.
std::vector<KeyPress> WorkshopPlace::keys_of(const PlaceInput& input) {
    std::vector<KeyPress> keys = *input.frame.keys;
    for (const KeyPress& key : presenter_.take_keys())
        keys.push_back(key);
    return keys;
}

PlaceFrame WorkshopPlace::run_shelf(const PlaceInput& input) {
    const LessonShelfFrame result = draw_lesson_shelf(input.style, input.window_px, keys_of(input),
                                                      shelf_, message_, shelf_state_);
    wants_presenter_ = wants_presenter_ || result.notes_window;
    switch (result.action) {
    case LessonWish::none:
        break;
    case LessonWish::start:
        start(shelf_.lessons[shelf_state_.chosen].lesson, input.around);
        break;
    case LessonWish::edit:
        open_draft(shelf_state_.chosen);
        break;
    case LessonWish::add:
        draft_ = new_draft(free_lesson_path(own_lesson_folder(), "My lesson"));
        draft_ui_ = {};
        break;
    }
    return {};
}

PlaceFrame WorkshopPlace::run_draft(const PlaceInput& input) {
    static const std::vector<mechanics::Muscle> kNone;
    const auto& muscles = input.around.library.muscles();
    DraftFrame result = draw_draft(input.style, input.window_px, keys_of(input), *draft_,
                                   muscles ? *muscles : kNone, input.around.units, draft_ui_);
    PlaceFrame frame;
    draft_stage_ = std::move(result.stage);
    frame.pictures.push_back({&draft_stage_, result.stage_at_px});
    frame.changed = !result.intents.empty();
    for (const DraftIntent& intent : result.intents)
        update(*draft_, intent);
    switch (result.wish) {
    case DraftWish::none:
        break;
    case DraftWish::add_lever:
        frame.wish = BringFrom{PlaceName::bench};
        break;
    case DraftWish::add_exercise:
        frame.wish = BringFrom{PlaceName::body};
        break;
    case DraftWish::show:
        start_draft(input.around, draft_->state.chosen);
        break;
    case DraftWish::leave:
        leave_draft(input.around);
        break;
    }
    return frame;
}

void WorkshopPlace::grant(const ShowInput& asked, Surroundings& around) {
    switch (asked.wish) {
    case ShowWish::none:
        return;
    case ShowWish::leave:
        show_.reset();
        return;
    case ShowWish::notes_window:
        wants_presenter_ = true;
        return;
    case ShowWish::notes_below:
        note_below_ = !note_below_;
        return;
    case ShowWish::units:
        around.units =
            around.units == setup::UnitSystem::si ? setup::UnitSystem::us : setup::UnitSystem::si;
        show_->units = around.units;
        return;
    }
}

PlaceFrame WorkshopPlace::run_show(const PlaceInput& input) {
    const ShowInput asked = read_show_keys(*show_, keys_of(input));
    for (const ShowIntent& intent : asked.intents)
        update(*show_, intent);
    grant(asked, input.around);
    PlaceFrame frame;
    if (!show_)
        return frame;
    ShowFrame result = draw_show(input.style, input.window_px, *show_, note_below_);
    for (const ShowIntent& intent : result.intents)
        update(*show_, intent);
    if (result.leave)
        show_.reset();
    frame.drawing = std::move(result.drawing);
    return frame;
}

std::optional<double> WorkshopPlace::beside_due_s() const {
    if (!presenter_.is_open())
        return std::nullopt;
    return presenter_.until_tick_s(show_ ? &*show_ : nullptr);
}

const Narration* WorkshopPlace::run_beside(const Window& main, const Style& style) {
    pass_time();
    if (wants_presenter_) {
        wants_presenter_ = false;
        if (!presenter_.is_open())
            message_ = presenter_.open(main);
    }
    return presenter_.draw(main, style, show_ ? &*show_ : nullptr);
}

} // namespace steelyard::app
