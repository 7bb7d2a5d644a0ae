#include "scene/drawing.h"

#include <algorithm>
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
    Shape operator()(Outline outline) const {
        for (Ring& ring : outline.rings)
            for (Point& corner : ring)
                corner *= factor;
        return outline;
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
    void operator()(Outline& outline) const {
        for (Ring& ring : outline.rings)
            for (Point& corner : ring)
                corner += by;
    }
    void operator()(Box& box) const { box.centre += by; }
    void operator()(Label& label) const { label.at += by; }
};

} // namespace

Label make_label(const Point& at, std::string text, TextSize size, Role role, Align align,
                 bool strong) {
    return {at, std::move(text), size, strong, role, align, 0.0};
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
