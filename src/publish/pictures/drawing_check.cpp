#include "publish/pictures/drawing_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::publish {
namespace {

using namespace scene;

bool finite(double number) {
    return std::isfinite(number);
}
bool finite(const Point& place) {
    return place.allFinite();
}
bool finite(const Stroke& stroke) {
    return finite(stroke.width_px) && finite(stroke.opacity);
}
bool finite(const std::optional<Stroke>& stroke) {
    return !stroke || finite(*stroke);
}

struct IsFinite {
    bool operator()(const Line& line) const {
        return finite(line.from) && finite(line.to) && finite(line.stroke);
    }
    bool operator()(const Polyline& polyline) const {
        return finite(polyline.stroke) &&
               std::all_of(polyline.corners.begin(), polyline.corners.end(),
                           [](const Point& corner) { return finite(corner); });
    }
    bool operator()(const Arc& arc) const {
        return finite(arc.centre) && finite(arc.radius_px) && finite(arc.from_rad) &&
               finite(arc.to_rad) && finite(arc.stroke);
    }
    bool operator()(const Disc& disc) const {
        return finite(disc.centre) && finite(disc.radius_px) && finite(disc.fill_opacity) &&
               finite(disc.outline);
    }
    bool operator()(const Triangle& triangle) const {
        return finite(triangle.a) && finite(triangle.b) && finite(triangle.c) &&
               finite(triangle.opacity);
    }
    bool operator()(const Outline& outline) const {
        return std::all_of(outline.rings.begin(), outline.rings.end(), [](const Ring& ring) {
            return std::all_of(ring.begin(), ring.end(),
                               [](const Point& corner) { return finite(corner); });
        });
    }
    bool operator()(const Box& box) const {
        return finite(box.centre) && finite(box.size_px) && finite(box.corner_px) &&
               finite(box.turn_rad) && finite(box.fill_opacity) && finite(box.outline);
    }
    bool operator()(const Label& label) const { return finite(label.at) && finite(label.turn_rad); }
};

bool possible_side(double side_px) {
    return side_px >= 1.0 && side_px <= kMaxSide_px;
}

} // namespace

std::optional<PublishError> fault_in(const Drawing& drawing) {
    // The comparisons are false for NaN too.
    if (!possible_side(drawing.size_px.x()) || !possible_side(drawing.size_px.y())) {
        return PublishError{PublishFault::bad_size,
                            fmt::format("No sheet is {} by {} px. Choose both from 1 to {}.",
                                        drawing.size_px.x(), drawing.size_px.y(), kMaxSide_px)};
    }
    const auto broken =
        std::find_if(drawing.shapes.begin(), drawing.shapes.end(),
                     [](const Shape& shape) { return !std::visit(IsFinite{}, shape); });
    if (broken != drawing.shapes.end()) {
        return PublishError{
            PublishFault::bad_place,
            fmt::format("Shape {} of \"{}\" has a place that is not a number. This is a mistake "
                        "in the program: please report the setup that shows it.",
                        broken - drawing.shapes.begin() + 1, drawing.title)};
    }
    return std::nullopt;
}

} // namespace steelyard::publish
