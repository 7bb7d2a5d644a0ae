#include "scene/body/close_up.h"

#include "scene/body/order_bar.h"
#include "scene/figure/figure.h"
#include "scene/marks/sheet_cut.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::scene {

namespace {

/// An axis points at the eye this much where what turns about it is seen turning.
constexpr double kEndOn = 0.5;
constexpr double kLongestPull = 0.22; ///< of the stage's height
constexpr double kPastFoot_px = 34.0; ///< the line of action beyond its marks
constexpr double kAroundPerson_px = 6.0;

Box box_of(const Rect& rect) {
    Box box;
    box.centre = 0.5 * (rect.low + rect.high);
    box.size_px = rect.high - rect.low;
    return box;
}

} // namespace

CloseUp close_up_on(const Point& sheet_px, double heading_top_px, double text_scale) {
    constexpr double kEdge_px = 24.0;
    CloseUp places;
    const double bar_px = std::min(460.0 * text_scale, 0.5 * sheet_px.x());
    const Point bar_high(sheet_px.x() - kEdge_px, heading_top_px + kOrderBar_px * text_scale);
    places.order_bar = Rect{{bar_high.x() - bar_px, heading_top_px}, bar_high};
    const double person_px = std::clamp(0.11 * sheet_px.x(), 64.0, 200.0);
    places.whole_person.low = {kEdge_px, bar_high.y() + 8.0};
    places.whole_person.high =
        places.whole_person.low + Point(person_px, std::min(1.9 * person_px, 0.36 * sheet_px.y()));
    return places;
}

BodyMargins close_up_margins(const CloseUp& places, const Point& sheet_px, double text_scale) {
    const double side_px = places.whole_person.high.x() + 24.0;
    const double words_px = std::min(150.0 * text_scale, 0.18 * sheet_px.x());
    return {side_px + 0.3 * words_px, words_px, places.whole_person.low.y(),
            std::min(130.0 * text_scale, 0.26 * sheet_px.y())};
}

std::optional<std::size_t> strongest_pull(const mechanics::HingeMuscles& muscles) {
    std::optional<std::size_t> strongest;
    double most_N = 0.0;
    for (std::size_t i = 0; i < muscles.levers.size(); ++i)
        if (muscles.levers[i] && muscles.solution.muscles[i].tension_N > most_N) {
            most_N = muscles.solution.muscles[i].tension_N;
            strongest = i;
        }
    return strongest;
}

std::optional<PullMark> pull_mark(const mechanics::HingeMuscles& muscles,
                                  const mechanics::Placement& placement, mechanics::Hinge hinge,
                                  const BodyStage& stage) {
    const auto strongest = strongest_pull(muscles);
    const double toward = placement.axis(hinge).dot(stage.camera.toward_eye());
    if (!strongest || std::abs(toward) < kEndOn)
        return std::nullopt;
    const mechanics::MuscleLever& lever = *muscles.levers[*strongest];
    const Point axis = stage.to_sheet(placement.axis_point_m(hinge));
    const Point pull_px = stage.arrow(lever.effort.force_N);
    if (pull_px.norm() < 1.0)
        return std::nullopt;
    const Point along = pull_px.normalized();
    const Point insertion = stage.to_sheet(lever.effort.point_m);
    const Point across = (axis + (insertion - axis).dot(along) * along) - insertion;
    if (across.norm() < 1.0)
        return std::nullopt; // its line runs through the joint as it is seen
    PullMark mark;
    mark.name = lever.effort.name;
    mark.tension_N = lever.effort.force_N.norm();
    mark.arm_m = lever.effort_arm_m;
    mark.arm.axis = axis;
    mark.arm.foot = axis - mark.arm_m * stage.px_per_m * across.normalized();
    mark.arm.along_line = along;
    mark.from = mark.arm.foot + (insertion - mark.arm.foot).dot(along) * along;
    mark.span = arrow_span(pull_px, kLongestPull * stage.size_px.y());
    return mark;
}

void add_pull_mark(const PullMark& pull, std::vector<Shape>& shapes) {
    const Point& along = pull.arm.along_line;
    const double foot = (pull.arm.foot - pull.from).dot(along);
    const double first = std::min(0.0, foot) - kPastFoot_px;
    const double last = std::max(pull.span.along_px.norm(), foot) + kPastFoot_px;
    shapes.emplace_back(Line{pull.from + first * along,
                             pull.from + last * along,
                             {Role::effort, 1.5, Dash::dashed, 0.8}});
    add_arm(pull.arm, {Role::effort, 3.0, Dash::solid, 1.0}, shapes);
    const Stroke stroke{Role::effort, 4.5};
    add_arrow(pull.from, pull.to(), Tail::plain, stroke, shapes);
    if (pull.span.cut)
        add_break(pull.from, pull.to(), stroke, shapes);
}

void add_whole_person(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                      const BodyStage& near, const Rect& window, const Rect& room,
                      std::vector<Shape>& shapes) {
    Box ground = box_of(room);
    ground.corner_px = 6.0;
    ground.fill = Role::panel;
    shapes.emplace_back(ground);
    const Point size_px = room.high - room.low;
    const BodyMargins margins{kAroundPerson_px, kAroundPerson_px, kAroundPerson_px,
                              kAroundPerson_px};
    BodyStage small = fit_body(body_case, {result}, near.camera, size_px, margins);
    small.origin_px += room.low;
    const std::size_t from = shapes.size();
    add_figure(body_case, result.placement, small, shapes);
    const double part = small.px_per_m / near.px_per_m;
    const auto seen = [&](const Point& near_px) {
        const Point at = small.origin_px + part * (near_px - near.origin_px);
        const Point inside = Point::Constant(2.0);
        return Point(at.cwiseMax(room.low + inside).cwiseMin(room.high - inside));
    };
    Box frame = box_of({seen(window.low), seen(window.high)});
    frame.outline = Stroke{Role::ink, 1.5};
    cut_to(room, from, shapes);
    shapes.emplace_back(frame);
}

} // namespace steelyard::scene
