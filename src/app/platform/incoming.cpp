#include "app/platform/window.h"

namespace steelyard::app {

namespace {

/// As desktops have them; common practice, no source.
constexpr double kDoubleClick_s = 0.5;
constexpr double kDoubleClick_px = 6.0;

} // namespace

void Incoming::press(const scene::Point& at_px, double at_s, bool left) {
    const bool second = left && pressed_at_s >= 0.0 && at_s - pressed_at_s <= kDoubleClick_s &&
                        (at_px - pressed_at_px).norm() <= kDoubleClick_px;
    double_clicked = double_clicked || second;
    pressed_at_px = at_px;
    pressed_at_s = left && !second ? at_s : -1.0;
}

} // namespace steelyard::app
