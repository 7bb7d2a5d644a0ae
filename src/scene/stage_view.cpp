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

/// The parts of a sheet between two corners.
struct Extent {
    Point low;
    Point high;

    void take_in(const Point& point) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
};

/// What the lever and its arrows take of the sheet.
Extent extent_of(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                 const StageView& view) {
    const Point start = view.to_sheet(lever.path_m.front());
    Extent extent{start, start};
    for (const Vec2& corner : lever.path_m)
        extent.take_in(view.to_sheet(corner));
    const auto take_in = [&](const Vec2& point_m, const Vec2& force_N) {
        extent.take_in(view.to_sheet(point_m) + view.px_per_N * Point(force_N.x(), -force_N.y()));
    };
    for (const mechanics::ForceReading& load : solved.loads)
        take_in(load.point_m, load.force_N);
    take_in(solved.own_weight.point_m, solved.own_weight.force_N);
    take_in(solved.effort.point_m, solved.effort.force_N);
    take_in(solved.axis_m, solved.axis_reaction_N);
    return extent;
}

/// How far to move what lies from `low` to `high` so that it lies within the bounds; what is too
/// long is put in their middle.
double shift_into(double low, double high, double least, double most) {
    if (high - low > most - least)
        return 0.5 * (least + most) - 0.5 * (low + high);
    return std::max(0.0, least - low) + std::min(0.0, most - high);
}

/// Shortens the arrows until they fit between the margins, within reason, then moves the lever so
/// that they do.
void make_room_for_arrows(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                          const StageMargins& margins, StageView& view) {
    constexpr int kMostSteps = 8;
    constexpr double kShorter = 0.85;
    const Point least{0.4 * margins.side_px, margins.top_px};
    const Point most{view.size_px.x() - 0.4 * margins.side_px,
                     view.size_px.y() - 0.75 * margins.bottom_px};
    Extent extent = extent_of(lever, solved, view);
    for (int i = 0;
         i < kMostSteps && ((extent.high - extent.low) - (most - least)).maxCoeff() > 0.0; ++i) {
        view.px_per_N *= kShorter;
        extent = extent_of(lever, solved, view);
    }
    for (int part = 0; part < 2; ++part)
        view.origin_px[part] +=
            shift_into(extent.low[part], extent.high[part], least[part], most[part]);
}

} // namespace

StageView fit_lever(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                    const Point& size_px, const StageMargins& margins,
                    const std::vector<Vec2>& also_m) {
    Vec2 low = lever.path_m.front();
    Vec2 high = low;
    for (const Vec2& corner : lever.path_m) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    for (const Vec2& place : also_m) {
        low = low.cwiseMin(place);
        high = high.cwiseMax(place);
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
    view.px_per_N = 0.36 * room.minCoeff() / largest_force(solved);
    make_room_for_arrows(lever, solved, margins, view);
    return view;
}

StageView zoomed(const StageView& view, const Point& about_px, double factor) {
    StageView nearer = view;
    nearer.px_per_m = view.px_per_m * factor;
    nearer.origin_px = about_px + factor * (view.origin_px - about_px);
    return nearer;
}

void share_scale(StageView& one, StageView& other) {
    const double px_per_m = std::min(one.px_per_m, other.px_per_m);
    const double px_per_N = std::min(one.px_per_N, other.px_per_N);
    for (StageView* view : {&one, &other}) {
        *view = zoomed(*view, 0.5 * view->size_px, px_per_m / view->px_per_m);
        view->px_per_N = px_per_N;
    }
}

double round_step_below(double value) {
    const double power = std::pow(10.0, std::floor(std::log10(value)));
    for (const double lead : {5.0, 2.0})
        if (lead * power <= value * (1.0 + 1e-9))
            return lead * power;
    return power;
}

} // namespace steelyard::scene
