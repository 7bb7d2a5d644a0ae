#include "scene/stage_view.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Vec2;

/// Largest force to be shown [N]; 1 when nothing pulls.
double largest_force(const mechanics::LeverResult& solved) {
    double largest_N = std::max({solved.effort.force_N.norm(), solved.own_weight.force_N.norm(),
                                 0.8 * solved.axis_reaction_N.norm()});
    for (const mechanics::ForceReading& load : solved.loads)
        largest_N = std::max(largest_N, load.force_N.norm());
    return largest_N > 0.0 ? largest_N : 1.0;
}

} // namespace

StageView fit_lever(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                    const Point& size_px, const StageMargins& margins) {
    Vec2 low = lever.path_m.front();
    Vec2 high = low;
    for (const Vec2& corner : lever.path_m) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    const Vec2 span = (high - low).cwiseMax(Vec2(1e-6, 1e-6));
    const Point room{std::max(size_px.x() - 2.0 * margins.side_px, 80.0),
                     std::max(size_px.y() - margins.top_px - margins.bottom_px, 80.0)};

    StageView view;
    view.size_px = size_px;
    // A tall lever leaves half the height to its arrows.
    view.px_per_m = std::min(room.x() / span.x(), 0.6 * room.y() / span.y());
    const Vec2 middle = 0.5 * (low + high);
    const Point centre{0.5 * size_px.x(), margins.top_px + 0.5 * room.y()};
    view.origin_px = centre + view.px_per_m * Point(-middle.x(), middle.y());
    view.px_per_N = 0.36 * room.y() / largest_force(solved);
    return view;
}

StageView zoomed(const StageView& view, const Point& about_px, double factor) {
    StageView nearer = view;
    nearer.px_per_m = view.px_per_m * factor;
    nearer.origin_px = about_px + factor * (view.origin_px - about_px);
    return nearer;
}

double round_step_below(double value) {
    const double power = std::pow(10.0, std::floor(std::log10(value)));
    for (const double lead : {5.0, 2.0})
        if (lead * power <= value * (1.0 + 1e-9))
            return lead * power;
    return power;
}

} // namespace steelyard::scene
