#include "app/workshop/workshop_place.h"

#include "app/workshop/room_stage.h"
#include "app/workshop/show_keys.h"
#include "app/workshop/show_view.h"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace steelyard::app {

void WorkshopPlace::enter(Surroundings& around) {
    message_.clear();
    shelf_ =
        read_lesson_shelf(around.library.data_folder() / "assets" / "lessons", own_lesson_folder());
}

bool WorkshopPlace::claims(const KeyPress& key) const {
    if ((key.modifiers & GLFW_MOD_CONTROL) != 0)
        return false;
    if (!show_)
        return key.key == GLFW_KEY_F5;
    return key.key != GLFW_KEY_D || !show_->entry.empty();
}

std::optional<double> WorkshopPlace::own_type_scale(const scene::Point& window_px) const {
    if (!show_)
        return std::nullopt;
    return room_type_scale(window_px.y());
}

void WorkshopPlace::open_file(const std::filesystem::path& path, Surroundings& around) {
    auto lesson = setup::read_lesson(path);
    if (lesson)
        start(*lesson, around);
    else
        message_ = setup::to_text(lesson.error());
}

void WorkshopPlace::start(const setup::Lesson& lesson, Surroundings& around) {
    const auto& muscles = around.library.muscles();
    if (!muscles) {
        message_ = muscles.error();
        return;
    }
    message_.clear();
    show_ = make_show(lesson, *muscles, around.units);
    passed_at_s_ = glfwGetTime();
}

void WorkshopPlace::pass_time() {
    const double now_s = glfwGetTime();
    if (show_)
        update(*show_, PassTime{now_s - passed_at_s_});
    passed_at_s_ = now_s;
}

PlaceFrame WorkshopPlace::run(const PlaceInput& input) {
    pass_time();
    return show_ ? run_show(input) : run_shelf(input);
}

PlaceFrame WorkshopPlace::run_shelf(const PlaceInput& input) {
    std::vector<KeyPress> keys = *input.frame.keys;
    for (const KeyPress& key : presenter_.take_keys())
        keys.push_back(key);
    const LessonShelfOutcome outcome =
        draw_lesson_shelf(input.style, input.window_px, keys, shelf_, message_, shelf_state_);
    wants_presenter_ = wants_presenter_ || outcome.notes_window;
    if (outcome.action == ShelfAction::start)
        start(shelf_.lessons[shelf_state_.chosen].lesson, input.around);
    return {};
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
    std::vector<KeyPress> keys = *input.frame.keys;
    for (const KeyPress& key : presenter_.take_keys())
        keys.push_back(key);
    const ShowInput asked = read_show_keys(*show_, keys);
    for (const ShowIntent& intent : asked.intents)
        update(*show_, intent);
    grant(asked, input.around);
    PlaceFrame frame;
    if (!show_)
        return frame;
    ShowOutcome outcome = draw_show(input.style, input.window_px, *show_, note_below_);
    if (outcome.pressed)
        update(*show_, PressAnswer{*outcome.pressed});
    frame.drawing = std::move(outcome.drawing);
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
        if (presenter_.is_open())
            presenter_.close(main);
        else
            message_ = presenter_.open(main);
    }
    return presenter_.draw(main, style, show_ ? &*show_ : nullptr);
}

} // namespace steelyard::app
