#include "app/workshop/presenter_window.h"

#include "app/workshop/presenter_view.h"

#include <GLFW/glfw3.h>
#include <glad/gl.h>

#include <algorithm>
#include <cmath>
#include <ctime>

namespace steelyard::app {

namespace {

/// Larger than at a desk: it is read standing, from an arm's length and more.
constexpr double kEnlarged = 1.3;
constexpr int kWidth_px = 1100;
constexpr int kHeight_px = 700;
/// Waking a little later than a change is due shows it surely.
constexpr double kLate_s = 0.02;

/// Upper left corner for a second window: on the first monitor that the main one is not on.
void move_to_other_monitor(const Window& main, GLFWwindow* window) {
    int count = 0;
    GLFWmonitor** monitors = glfwGetMonitors(&count);
    int main_x = 0;
    int main_y = 0;
    glfwGetWindowPos(main.handle(), &main_x, &main_y);
    for (int i = 0; i < count; ++i) {
        int x = 0;
        int y = 0;
        int width = 0;
        int height = 0;
        glfwGetMonitorWorkarea(monitors[i], &x, &y, &width, &height);
        const bool holds_main =
            main_x >= x && main_x < x + width && main_y >= y && main_y < y + height;
        if (holds_main)
            continue;
        glfwSetWindowPos(window, x + std::max(0, (width - kWidth_px) / 2),
                         y + std::max(0, (height - kHeight_px) / 2));
        return;
    }
}

double seconds_of_minute() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return local.tm_sec;
}

} // namespace

std::string PresenterWindow::open(const Window& main) {
    auto window = Window::open_beside(main, kWidth_px, kHeight_px, "Steelyard: presenter");
    if (!window) {
        main.make_current();
        return window.error().what;
    }
    window_.emplace(std::move(*window));
    fonts_for_ = 0.0;
    move_to_other_monitor(main, window_->handle());
    glfwFocusWindow(main.handle());
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
    keys.swap(window_->incoming().keys);
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
    const scene::Point size_px = window_->size_px();
    const double device_pixels = window_->device_pixels();
    draw_presenter_view(style_, size_px, show);
    const scene::Rgb sheet = scene::colour_of(scene::Role::sheet, style_.look);
    glViewport(0, 0, static_cast<int>(std::lround(size_px.x() * device_pixels)),
               static_cast<int>(std::lround(size_px.y() * device_pixels)));
    glDisable(GL_SCISSOR_TEST);
    glClearColor(static_cast<float>(sheet.red) / 255.0F, static_cast<float>(sheet.green) / 255.0F,
                 static_cast<float>(sheet.blue) / 255.0F, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
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
