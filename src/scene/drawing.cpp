#include "scene/drawing.h"

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
    Shape operator()(Box box) const {
        box.centre *= factor;
        box.size_px *= factor;
        box.corner_px *= factor;
        box.outline = scaled(box.outline);
        return box;
    }
    Shape operator()(const Label& label) const { return label; }
};

} // namespace

Drawing scaled_without_labels(const Drawing& drawing, double factor) {
    Drawing reduced;
    reduced.size_px = drawing.size_px * factor;
    reduced.title = drawing.title;
    reduced.description = drawing.description;
    for (const Shape& shape : drawing.shapes)
        if (!std::holds_alternative<Label>(shape))
            reduced.shapes.push_back(std::visit(Scaler{factor}, shape));
    return reduced;
}

} // namespace steelyard::scene
