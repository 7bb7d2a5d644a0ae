#include "app/workshop/presenter_window.h"

#include "app/platform/key.h"
#include "app/workshop/presenter_place.h"
#include "app/workshop/presenter_view.h"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <utility>

namespace steelyard::app {

namespace {

/// Larger than at a desk: it is read standing, from an arm's length and more.
constexpr double kEnlarged = 1.3;
constexpr ScreenArea kWanted{0, 0, 1100, 700};
/// Waking a little later than a change is due shows it surely.
constexpr double kLate_s = 0.02;

double seconds_of_minute() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return local.tm_sec;
}

} // namespace

std::string PresenterWindow::open(const Window& main) {
    const std::vector<ScreenArea> monitors = Window::screens();
    const ScreenArea area = presenter_area(monitors, main.area(), kWanted);
    auto window = Window::open_beside(main, area.width, area.height, "Steelyard: notes");
    if (!window) {
        main.make_current();
        return window.error().what;
    }
    window_.emplace(std::move(*window));
    fonts_for_ = 0.0;
    window_->move_to(area.x, area.y);
    if (monitors.size() > 1) // on a single monitor the main window would cover this one
        main.focus();
    main.make_current();
    return {};
}

void PresenterWindow::close(const Window& main) {
    window_.reset();
    main.make_current();
}

bool PresenterWindow::stirred() {
    if (!window_ || !window_->incoming().anything)
        return false;
    window_->incoming().anything = false;
    return true;
}

std::vector<KeyPress> PresenterWindow::take_keys() {
    if (!window_)
        return {};
    std::vector<KeyPress> keys;
    for (const KeyPress& key : std::exchange(window_->incoming().keys, {}))
        if (key.key == key::kF11)
            window_->turn_full_screen();
        else
            keys.push_back(key);
    return keys;
}

void PresenterWindow::prepare_style(const Style& main_style) {
    const double scale = kEnlarged * window_->content_scale();
    const bool other_look = style_.look != main_style.look;
    style_.look = main_style.look;
    style_.narration = main_style.narration != nullptr ? &narration_ : nullptr;
    if (scale == fonts_for_ && !other_look)
        return;
    if (scale != fonts_for_) {
        fonts_for_ = scale;
        style_.fonts = load_fonts(static_cast<float>(scale));
        window_->renew_font_texture();
    }
    apply_to_imgui(style_);
}

const Narration* PresenterWindow::draw(const Window& main, const Style& main_style,
                                       const ShowModel* show) {
    if (!window_)
        return nullptr;
    if (window_->wants_to_close()) {
        close(main);
        return nullptr;
    }
    window_->make_current();
    prepare_style(main_style);
    window_->begin_frame();
    narration_.begin_frame();
    draw_presenter_view(style_, window_->size_px(), show);
    window_->fill(scene::colour_of(scene::Role::sheet, style_.look));
    window_->end_frame();
    main.make_current();
    return &narration_;
}

double PresenterWindow::until_tick_s(const ShowModel* show) const {
    double wait_s = 60.0 - seconds_of_minute();
    if (show != nullptr)
        wait_s = std::min(wait_s, kTimerStep_s - std::fmod(show->now().spent_s, kTimerStep_s));
    return wait_s + kLate_s;
}

} // namespace steelyard::app
