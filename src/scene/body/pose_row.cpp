#include "scene/body/pose_row.h"

#include "scene/figure/figure.h"
#include "scene/marks/force_marks.h"

#include <cmath>

namespace steelyard::scene {
namespace {

void add_pulls(const mechanics::BodyResult& result, const BodyStage& stage, double longest_px,
               std::vector<Shape>& shapes) {
    for (const mechanics::BodyForce& force : result.forces) {
        if (force.origin != mechanics::ForceOrigin::resistance)
            continue;
        const Point from = stage.to_sheet(force.point_m);
        const ArrowSpan span = arrow_span(stage.arrow(force.force_N), longest_px);
        constexpr double kShortestRow_px = 5.0;
        if (span.along_px.norm() >= kShortestRow_px)
            add_arrow(from, from + span.along_px, Tail::plain, {Role::load, 2.5}, shapes);
    }
}

} // namespace

void add_pose_row(const mechanics::Exercise& exercise, const Camera& camera,
                  const std::vector<PosePlace>& places, const Rect& room, double width_px,
                  std::vector<Shape>& shapes) {
    std::vector<double> all;
    for (const PosePlace& place : places)
        all.push_back(place.progress);
    const auto results = solved_along(exercise, all);
    if (results.size() != places.size())
        return; // a pose that cannot be solved: better no row than one out of step
    const Point size_px(width_px, room.high.y() - room.low.y());
    BodyStage stage = fit_body(exercise.body_case, results, camera, size_px, {2.0, 2.0, 2.0, 10.0});
    const Point origin = stage.origin_px;
    const double floor_px = room.low.y() + origin.y();
    if (std::abs(camera.toward_eye().y()) < 0.5 && floor_px <= room.high.y()) {
        shapes.emplace_back(
            Line{{room.low.x(), floor_px}, {room.high.x(), floor_px}, {Role::quiet_ink, 1.5}});
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
        stage.origin_px = origin + Point(places[i].middle_px - 0.5 * width_px, room.low.y());
        add_figure(exercise.body_case, results[i].placement, stage, shapes);
        add_pulls(results[i], stage, 0.3 * size_px.y(), shapes);
    }
}

} // namespace steelyard::scene
