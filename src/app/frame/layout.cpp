#include "app/frame/layout.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

double growth_of(const scene::Point& window_px, double text_size) {
    const double larger = std::min(window_px.x() / 1280.0, window_px.y() / 720.0);
    const double growth = std::max(1.0, std::floor(8.0 * (0.5 + 0.5 * larger)) / 8.0);
    return std::pow(growth, std::clamp((2.5 - text_size) / 1.5, 0.0, 1.0));
}

bool is_bare(const Layout& layout, double text_scale) {
    return layout.stage_px.y() < 300.0 * text_scale;
}

Layout lay_out(const scene::Point& window_px, double text_scale) {
    const double column_px = std::round(std::max(0.26 * window_px.x(), 300.0 * text_scale));
    Layout layout;
    layout.narrow = window_px.x() - column_px < 1.1 * column_px;
    if (layout.narrow) {
        const double sheet_px = std::round(0.42 * window_px.y());
        layout.stage_px = {window_px.x(), window_px.y() - sheet_px};
        layout.column_at_px = {0.0, layout.stage_px.y()};
        layout.column_px = {window_px.x(), sheet_px};
    } else {
        layout.stage_px = {window_px.x() - column_px, window_px.y()};
        layout.column_at_px = {layout.stage_px.x(), 0.0};
        layout.column_px = {column_px, window_px.y()};
    }
    return layout;
}

} // namespace steelyard::app
