#include "scene/lever/lever_parts.h"

#include "mechanics/lever/lever_geometry.h"
#include "scene/marks/force_marks.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

double longest_arrow_px(const StageView& view) {
    return 0.42 * std::min(view.size_px.x(), view.size_px.y());
}

Point arrow_px(const StageView& view, const mechanics::Vec2& force_N) {
    return view.px_per_N * Point(force_N.x(), -force_N.y());
}

double shown_effort_N(const mechanics::LeverResult& solved, const LeverPose& pose) {
    return pose.hand_N ? *pose.hand_N : solved.effort_N.value_or(0.0);
}

Point tilted_point(const StageView& view, const mechanics::LeverResult& solved,
                   const LeverPose& pose, const mechanics::Vec2& point_m) {
    const mechanics::Vec2 from = point_m - solved.axis_m;
    const double c = std::cos(pose.tilt_rad);
    const double s = std::sin(pose.tilt_rad);
    return view.to_sheet(solved.axis_m +
                         mechanics::Vec2(from.x() * c - from.y() * s, from.x() * s + from.y() * c));
}

namespace {

Point tip_of(const StageView& view, const Point& from_px, const mechanics::Vec2& force_N,
             const mechanics::Vec2& direction) {
    const Point span = arrow_px(view, force_N);
    if (span.norm() < kStubArrow_px * 0.5)
        return from_px + kStubArrow_px * Point(direction.x(), -direction.y());
    return from_px + arrow_span(span, longest_arrow_px(view)).along_px;
}

/// From a corner to its grip [px]: farther than grips reach.
constexpr double kCornerGripOff_px = 34.0;

} // namespace

Point corner_grip_offset_px(const mechanics::Lever& lever, std::size_t corner) {
    const std::size_t last = lever.path_m.size() - 1;
    if (corner != 0 && corner != last)
        return {0.0, kCornerGripOff_px};
    const mechanics::Vec2& at = lever.path_m[corner];
    const mechanics::Vec2& next = lever.path_m[corner == 0 ? 1 : last - 1];
    const mechanics::Vec2 outward = (at - next).normalized();
    return kCornerGripOff_px * Point(outward.x(), -outward.y());
}

std::vector<Grip> corner_grips(const mechanics::Lever& lever, const StageView& view) {
    std::vector<Grip> grips;
    for (std::size_t i = 0; i < lever.path_m.size(); ++i)
        grips.push_back({{PartKind::corner, i},
                         Hold::place,
                         view.to_sheet(lever.path_m[i]) + corner_grip_offset_px(lever, i)});
    return grips;
}

std::vector<Grip> lever_grips(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                              const StageView& view, const LeverPose& pose) {
    std::vector<Grip> tips;
    std::vector<Grip> places;
    const mechanics::Vec2 along = mechanics::unit_vector(lever.effort.direction_rad);
    const Point effort_px = tilted_point(view, solved, pose, solved.effort.point_m);
    const LeverPart effort{PartKind::effort, 0};
    if (!mechanics::rests_on_two(lever))
        tips.push_back({effort, Hold::tip,
                        tip_of(view, effort_px, along * shown_effort_N(solved, pose), along)});
    places.push_back({effort, Hold::place, effort_px});
    for (std::size_t i = 0; i < lever.loads.size(); ++i) {
        if (std::holds_alternative<mechanics::Couple>(lever.loads[i].action))
            continue;
        const LeverPart part{PartKind::load, i};
        const mechanics::ForceReading& reading = solved.loads[i];
        const Point at_px = tilted_point(view, solved, pose, reading.point_m);
        const auto* pull = std::get_if<mechanics::PointForce>(&lever.loads[i].action);
        const mechanics::Vec2 direction =
            mechanics::unit_vector(pull != nullptr ? pull->direction_rad : mechanics::kDown_rad);
        if (mechanics::sought_load(lever) != i) // its size is not the hand's to set
            tips.push_back({part, Hold::tip, tip_of(view, at_px, reading.force_N, direction)});
        places.push_back({part, Hold::place, at_px});
    }
    places.push_back({{PartKind::axis, 0}, Hold::place, view.to_sheet(solved.axis_m)});
    if (lever.own_weight.mass_kg > 0.0)
        places.push_back({{PartKind::own_weight, 0},
                          Hold::place,
                          tilted_point(view, solved, pose, solved.own_weight.point_m)});
    tips.insert(tips.end(), places.begin(), places.end());
    return tips;
}

} // namespace steelyard::scene
