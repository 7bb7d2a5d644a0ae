#include "app/workshop/presenter_place.h"

#include <algorithm>

namespace steelyard::app {

namespace {

/// Pixels that two areas share.
long long shared_px(const ScreenArea& one, const ScreenArea& other) {
    const auto along = [](int from, int size, int other_from, int other_size) {
        return std::max(0, std::min(from + size, other_from + other_size) -
                               std::max(from, other_from));
    };
    return static_cast<long long>(along(one.x, one.width, other.x, other.width)) *
           along(one.y, one.height, other.y, other.height);
}

} // namespace

ScreenArea presenter_area(const std::vector<ScreenArea>& monitors, const ScreenArea& main,
                          const ScreenArea& wanted) {
    if (monitors.empty())
        return wanted;
    // A window may lie on several monitors: it is on the one that shows most of it.
    const auto of_main =
        std::max_element(monitors.begin(), monitors.end(), [&](const auto& a, const auto& b) {
            return shared_px(a, main) < shared_px(b, main);
        });
    const bool alone = monitors.size() == 1;
    const ScreenArea& monitor =
        alone || of_main != monitors.begin() ? monitors.front() : monitors[1];
    ScreenArea area = wanted;
    area.width = std::min(wanted.width, monitor.width);
    area.height = std::min(wanted.height, monitor.height);
    const int free_x = monitor.width - area.width;
    const int free_y = monitor.height - area.height;
    area.x = monitor.x + (alone ? free_x : free_x / 2);
    area.y = monitor.y + (alone ? free_y : free_y / 2);
    return area;
}

} // namespace steelyard::app
