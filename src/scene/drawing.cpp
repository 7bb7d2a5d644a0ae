#include "scene/drawing.h"

#include "mechanics/constants.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::scene {

namespace {

/// Enlarges each kind of shape.
struct Scaler {
    double factor;

    Stroke scaled(Stroke stroke) const {
        stroke.width_px *= factor;
        return stroke;
    }
    std::optional<Stroke> scaled(const std::optional<Stroke>& stroke) const {
        return stroke ? std::optional(scaled(*stroke)) : std::nullopt;
    }

    Shape operator()(const Line& line) const {
        return Line{line.from * factor, line.to * factor, scaled(line.stroke)};
    }
    Shape operator()(Polyline polyline) const {
        for (Point& corner : polyline.corners)
            corner *= factor;
        polyline.stroke = scaled(polyline.stroke);
        return polyline;
    }
    Shape operator()(Arc arc) const {
        arc.centre *= factor;
        arc.radius_px *= factor;
        arc.stroke = scaled(arc.stroke);
        return arc;
    }
    Shape operator()(Disc disc) const {
        disc.centre *= factor;
        disc.radius_px *= factor;
        disc.outline = scaled(disc.outline);
        return disc;
    }
    Shape operator()(Triangle triangle) const {
        for (Point* corner : {&triangle.a, &triangle.b, &triangle.c})
            *corner *= factor;
        return triangle;
    }
    Shape operator()(Taper taper) const {
        for (Point* end : {&taper.from, &taper.to})
            *end *= factor;
        taper.from_radius_px *= factor;
        taper.to_radius_px *= factor;
        return taper;
    }
    Shape operator()(Box box) const {
        box.centre *= factor;
        box.size_px *= factor;
        box.corner_px *= factor;
        box.outline = scaled(box.outline);
        return box;
    }
    Shape operator()(Label label) const {
        label.at *= factor;
        return label;
    }
};

/// Moves each kind of shape.
struct Mover {
    Point by;

    void operator()(Line& line) const {
        line.from += by;
        line.to += by;
    }
    void operator()(Polyline& polyline) const {
        for (Point& corner : polyline.corners)
            corner += by;
    }
    void operator()(Arc& arc) const { arc.centre += by; }
    void operator()(Disc& disc) const { disc.centre += by; }
    void operator()(Triangle& triangle) const {
        for (Point* corner : {&triangle.a, &triangle.b, &triangle.c})
            *corner += by;
    }
    void operator()(Taper& taper) const {
        taper.from += by;
        taper.to += by;
    }
    void operator()(Box& box) const { box.centre += by; }
    void operator()(Label& label) const { label.at += by; }
};

} // namespace

Label make_label(const Point& at, std::string text, TextSize size, Role role, Align align,
                 bool strong) {
    return {at, std::move(text), size, strong, role, align, 0.0};
}

std::vector<Point> taper_outline(const Taper& taper) {
    constexpr int kCorners = 20; // of each round end
    const Point span = taper.to - taper.from;
    const double length_px = span.norm();
    const double difference_px = taper.from_radius_px - taper.to_radius_px;
    const double along_rad = std::atan2(span.y(), span.x());
    // The straight sides touch both discs at this angle from the line of centres; where one disc
    // lies inside the other, the hull is the larger disc.
    const double touch_rad =
        std::acos(std::clamp(difference_px / std::max(length_px, 1e-9), -1.0, 1.0));
    std::vector<Point> outline;
    const auto add_end = [&](const Point& centre, double radius_px, double from_rad,
                             double to_rad) {
        for (int i = 0; i <= kCorners; ++i) {
            const double angle_rad = along_rad + from_rad + (to_rad - from_rad) * i / kCorners;
            outline.emplace_back(centre +
                                 radius_px * Point(std::cos(angle_rad), std::sin(angle_rad)));
        }
    };
    add_end(taper.from, taper.from_radius_px, touch_rad, 2.0 * mechanics::kPi - touch_rad);
    add_end(taper.to, taper.to_radius_px, -touch_rad, touch_rad);
    return outline;
}

Drawing scaled(const Drawing& drawing, double factor) {
    Drawing result = drawing;
    result.size_px *= factor;
    for (Shape& shape : result.shapes)
        shape = std::visit(Scaler{factor}, std::move(shape));
    return result;
}

Drawing moved(Drawing drawing, const Point& by_px) {
    for (Shape& shape : drawing.shapes)
        std::visit(Mover{by_px}, shape);
    return drawing;
}

Drawing without_labels(Drawing drawing) {
    drawing.shapes.erase(
        std::remove_if(drawing.shapes.begin(), drawing.shapes.end(),
                       [](const Shape& shape) { return std::holds_alternative<Label>(shape); }),
        drawing.shapes.end());
    return drawing;
}

} // namespace steelyard::scene
