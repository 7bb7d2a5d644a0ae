#include "scene/marks/force_marks.h"

#include "mechanics/constants.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kHeadLength_px = 17.0;
constexpr double kHeadHalfWidth_px = 9.0;
constexpr double kRightAngle_px = 11.0;
constexpr double kBracket_px = 9.0;

Point square_to(const Point& unit) {
    return {-unit.y(), unit.x()};
}

/// Size of an arrow's head relative to the usual: thin arrows have small heads, short ones too.
double head_scale(double length_px, const Stroke& stroke) {
    const double by_width = std::clamp(stroke.width_px / 4.5, 0.6, 1.2);
    return std::min(by_width, length_px / (1.4 * kHeadLength_px));
}

void add_arrow_head(const Point& tip, const Point& along, double scale, const Stroke& stroke,
                    std::vector<Shape>& shapes) {
    const Point back = tip - along * (kHeadLength_px * scale);
    const Point side = square_to(along) * (kHeadHalfWidth_px * scale);
    shapes.emplace_back(Triangle{tip, back + side, back - side, stroke.role, stroke.opacity});
}

void add_tail(const Point& at, Tail tail, double turn_rad, const Stroke& stroke,
              std::vector<Shape>& shapes) {
    if (tail == Tail::square) {
        Box box;
        box.centre = at;
        box.size_px = {15.0, 15.0};
        box.corner_px = 1.0;
        box.turn_rad = turn_rad;
        box.fill = stroke.role;
        box.fill_opacity = stroke.opacity;
        shapes.emplace_back(box);
    } else if (tail == Tail::dot) {
        Disc disc;
        disc.centre = at;
        disc.radius_px = 5.0;
        disc.fill = stroke.role;
        disc.fill_opacity = stroke.opacity;
        shapes.emplace_back(disc);
    }
}

} // namespace

void add_arrow(const Point& from, const Point& to, Tail tail, const Stroke& stroke,
               std::vector<Shape>& shapes) {
    const Point span = to - from;
    const double length_px = span.norm();
    const double turn_rad = std::atan2(span.y(), span.x());
    if (length_px > 2.0) {
        const Point along = span / length_px;
        const double scale = head_scale(length_px, stroke);
        // The shaft ends inside the head, so that the tip stays sharp.
        shapes.emplace_back(Line{from, to - along * (0.75 * kHeadLength_px * scale), stroke});
        add_arrow_head(to, along, scale, stroke, shapes);
    }
    add_tail(from, tail, turn_rad, stroke, shapes);
}

void add_force_inward(const Point& centre, double radius_px, const Stroke& stroke,
                      std::vector<Shape>& shapes) {
    Disc disc;
    disc.centre = centre;
    disc.radius_px = radius_px;
    disc.fill = Role::sheet;
    disc.outline = stroke;
    shapes.emplace_back(disc);
    const double reach = radius_px * std::sqrt(0.5);
    for (const double side : {-1.0, 1.0})
        shapes.emplace_back(Line{centre + Point(-reach, -side * reach),
                                 centre + Point(reach, side * reach), stroke});
}

ArrowSpan arrow_span(const Point& force_px, double longest_px) {
    const double length_px = force_px.norm();
    if (length_px <= longest_px)
        return {force_px, false};
    return {force_px * (longest_px / length_px), true};
}

ArrowSpan ended_above(double lowest_px, const Point& from, ArrowSpan span) {
    constexpr double kStub_px = 26.0;
    const double room_px = std::max(lowest_px - from.y(), kStub_px);
    if (span.along_px.y() <= room_px)
        return span;
    return {span.along_px * (room_px / span.along_px.y()), true};
}

void add_break(const Point& from, const Point& to, const Stroke& stroke,
               std::vector<Shape>& shapes) {
    const Point span = to - from;
    const double length_px = span.norm();
    if (length_px < 1.0)
        return;
    const Point along = span / length_px;
    const Point slant = 9.0 * (square_to(along) + 0.5 * along).normalized();
    const Point middle = from + 0.5 * span;
    shapes.emplace_back(Line{middle - 2.0 * along,
                             middle + 2.0 * along,
                             {Role::sheet, stroke.width_px + 4.0, Dash::solid, 1.0}});
    for (const double side : {-4.0, 4.0}) {
        const Point at = middle + side * along;
        shapes.emplace_back(Line{at - slant, at + slant, {stroke.role, 2.0}});
    }
}

void add_arm(const ArmMark& arm, const Stroke& stroke, std::vector<Shape>& shapes) {
    const Point from = arm.axis + arm.shift;
    const Point to = arm.foot + arm.shift;
    const double length_px = (to - from).norm();
    if (length_px < 1.0)
        return;
    const Point along = (to - from) / length_px;
    const Point across = square_to(along);
    const double bracket_px = std::min(kBracket_px, 0.4 * length_px);
    shapes.emplace_back(Line{from, to, stroke});
    shapes.emplace_back(Line{to - bracket_px * across, to + bracket_px * across, stroke});
    if (arm.shift.norm() > 1.0) // moved off the axis: show where it starts
        shapes.emplace_back(Line{from - bracket_px * across, from + bracket_px * across, stroke});
    const double corner_px = std::min(kRightAngle_px, 0.4 * length_px);
    const Point inward = to - corner_px * along;
    const Point up = -arm.along_line * corner_px;
    const Stroke thin{stroke.role, 0.75 * stroke.width_px, Dash::solid, stroke.opacity};
    shapes.emplace_back(Polyline{{inward, inward + up, to + up}, thin});
}

void add_turning(const Point& axis, double radius_px, double turn_rad, const Stroke& stroke,
                 std::vector<Shape>& shapes) {
    if (std::abs(turn_rad) < 0.05)
        return;
    const double start_rad = -0.5 * mechanics::kPi;
    const double head_rad = std::min(std::abs(turn_rad), 0.6 * kHeadLength_px / radius_px);
    const double end_rad = start_rad + turn_rad;
    const double shaft_rad = end_rad - std::copysign(head_rad, turn_rad);
    shapes.emplace_back(Arc{axis, radius_px, std::min(start_rad, shaft_rad),
                            std::max(start_rad, shaft_rad), stroke});
    const Point tip = axis + radius_px * Point(std::cos(end_rad), std::sin(end_rad));
    const Point base = axis + radius_px * Point(std::cos(shaft_rad), std::sin(shaft_rad));
    add_arrow_head(tip, (tip - base).normalized(), 0.62, stroke, shapes);
}

} // namespace steelyard::scene
