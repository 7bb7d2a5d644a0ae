#include "app/paint/shape_batch.h"

#include "app/paint/outline_triangles.h"
#include "mechanics/constants.h"
#include "scene/dash.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;

std::array<float, 2> floats(const Point& point) {
    return {static_cast<float>(point.x()), static_cast<float>(point.y())};
}

/// Appends the records of one drawing; holds what all its shapes share.
class Appender {
public:
    Appender(const Point& offset_px, scene::Look look, std::vector<ShapeRecord>& records)
        : offset_px_(offset_px), look_(look), records_(records) {}

    void operator()(const scene::Line& line) { add_stroke(line.from, line.to, line.stroke); }

    void operator()(const scene::Polyline& polyline) {
        for (std::size_t i = 1; i < polyline.corners.size(); ++i)
            add_stroke(polyline.corners[i - 1], polyline.corners[i], polyline.stroke);
    }

    void operator()(const scene::Arc& arc) {
        const double middle_rad = 0.5 * (arc.from_rad + arc.to_rad);
        const double reach_px = arc.radius_px + 0.5 * arc.stroke.width_px;
        ShapeRecord& record = add(ShapeKind::arc, arc.centre, {reach_px, reach_px}, middle_rad,
                                  arc.stroke.role, arc.stroke.opacity);
        const double half_rad = std::min(0.5 * std::abs(arc.to_rad - arc.from_rad), mechanics::kPi);
        record.form = {static_cast<float>(arc.radius_px),
                       static_cast<float>(0.5 * arc.stroke.width_px), static_cast<float>(half_rad),
                       0.0F};
        const auto end = floats({std::cos(half_rad), std::sin(half_rad)});
        record.form_more = {end[0], end[1], 0.0F, 0.0F};
    }

    void operator()(const scene::Disc& disc) {
        const Point half{disc.radius_px, disc.radius_px};
        if (disc.fill)
            add_box(disc.centre, half, disc.radius_px, 0.0, *disc.fill, disc.fill_opacity);
        if (disc.outline)
            add_outline(disc.centre, half, disc.radius_px, 0.0, *disc.outline);
    }

    void operator()(const scene::Triangle& triangle) {
        add_triangle({{triangle.a, triangle.b, triangle.c}, {true, true, true}}, triangle.fill,
                     triangle.opacity);
    }

    void operator()(const scene::Outline& outline) {
        triangles_.clear();
        append_triangles(outline, triangles_);
        for (const OutlineTriangle& triangle : triangles_)
            add_triangle(triangle, outline.fill, 1.0);
    }

    void operator()(const scene::Box& box) {
        const Point half = 0.5 * box.size_px;
        if (box.fill)
            add_box(box.centre, half, box.corner_px, box.turn_rad, *box.fill, box.fill_opacity);
        if (box.outline)
            add_outline(box.centre, half, box.corner_px, box.turn_rad, *box.outline);
    }

    void operator()(const scene::Label& /*label*/) {} // text is painted apart

private:
    ShapeRecord& add(ShapeKind kind, const Point& centre, const Point& half, double turn_rad,
                     scene::Role role, double opacity) {
        const scene::Rgb rgb = scene::colour_of(role, look_);
        ShapeRecord& record = records_.emplace_back();
        record.kind = static_cast<float>(kind);
        record.centre = floats(centre + offset_px_);
        record.half = floats(half);
        record.turn = {static_cast<float>(std::cos(turn_rad)),
                       static_cast<float>(std::sin(turn_rad))};
        record.colour = {static_cast<float>(rgb.red) / 255.0F,
                         static_cast<float>(rgb.green) / 255.0F,
                         static_cast<float>(rgb.blue) / 255.0F, static_cast<float>(opacity)};
        return record;
    }

    /// A triangle lies in a rectangle along its longest side.
    void add_triangle(const OutlineTriangle& triangle, scene::Role fill, double opacity) {
        const auto& corners = triangle.corners;
        std::array<double, 3> side_px{}; // from each corner to the next
        for (std::size_t i = 0; i < 3; ++i)
            side_px[i] = (corners[(i + 1) % 3] - corners[i]).norm();
        const double round_px = side_px[0] + side_px[1] + side_px[2];
        const Point to_b = corners[1] - corners[0];
        const Point to_c = corners[2] - corners[0];
        const double doubled_area = to_b.x() * to_c.y() - to_b.y() * to_c.x();
        if (std::abs(doubled_area) < 1e-9) // nothing to be seen
            return;
        // Centre and radius of the inscribed circle.
        const Point inner =
            (side_px[1] * corners[0] + side_px[2] * corners[1] + side_px[0] * corners[2]) /
            round_px;
        const double radius_px = std::abs(doubled_area) / round_px;
        const auto longest = static_cast<std::size_t>(
            std::max_element(side_px.begin(), side_px.end()) - side_px.begin());
        const Point along = (corners[(longest + 1) % 3] - corners[longest]) / side_px[longest];
        const Point across{-along.y(), along.x()};
        const auto own = [&](const Point& way) { return Point(way.dot(along), way.dot(across)); };
        Point half = Point::Zero();
        for (const Point& corner : corners)
            half = half.cwiseMax(own(corner - inner).cwiseAbs());
        ShapeRecord& record =
            add(ShapeKind::triangle, inner, half, std::atan2(along.y(), along.x()), fill, opacity);
        const double turn = std::copysign(1.0, doubled_area);
        const auto out_of = [&](std::size_t i) {
            const Point side = (corners[(i + 1) % 3] - corners[i]) / side_px[i];
            return floats(turn * own(Point(side.y(), -side.x())));
        };
        const std::array<std::array<float, 2>, 3> out{out_of(0), out_of(1), out_of(2)};
        record.form = {out[0][0], out[0][1], out[1][0], out[1][1]};
        record.form_more = {out[2][0], out[2][1], static_cast<float>(radius_px),
                            packed_ends(triangle, own(corners[longest] - inner).x(),
                                        own(corners[(longest + 1) % 3] - inner).x())};
    }

    /// See the shader: the nearer end of the longest side, and which sides lie within a form.
    static float packed_ends(const OutlineTriangle& triangle, double start_px, double end_px) {
        constexpr double kMost_px = 4095.0;
        constexpr double kSum = 4096.0;
        double sum = end_px < -start_px ? 8.0 : 0.0;
        for (std::size_t i = 0; i < 3; ++i)
            sum += triangle.on_outline[i] ? 0.0 : static_cast<double>(1U << i);
        return static_cast<float>(kSum * sum + std::min({-start_px, end_px, kMost_px}));
    }

    void add_box(const Point& centre, const Point& half, double corner_px, double turn_rad,
                 scene::Role role, double opacity) {
        ShapeRecord& record = add(ShapeKind::box_fill, centre, half, turn_rad, role, opacity);
        record.form = {static_cast<float>(half.x()), static_cast<float>(half.y()),
                       static_cast<float>(std::min({corner_px, half.x(), half.y()})), 0.0F};
    }

    void add_outline(const Point& centre, const Point& half, double corner_px, double turn_rad,
                     const scene::Stroke& stroke) {
        const double half_width_px = 0.5 * stroke.width_px;
        ShapeRecord& record =
            add(ShapeKind::box_outline, centre, half + Point(half_width_px, half_width_px),
                turn_rad, stroke.role, stroke.opacity);
        record.form = {static_cast<float>(half.x()), static_cast<float>(half.y()),
                       static_cast<float>(std::min({corner_px, half.x(), half.y()})),
                       static_cast<float>(half_width_px)};
    }

    /// A straight stroke is a box with round ends, or a row of dashes.
    void add_stroke(const Point& from, const Point& to, const scene::Stroke& stroke) {
        const Point along = to - from;
        const double half_width_px = 0.5 * stroke.width_px;
        const Point half{0.5 * along.norm() + half_width_px, half_width_px};
        const double turn_rad = std::atan2(along.y(), along.x());
        const Point centre = 0.5 * (from + to);
        if (stroke.dash == scene::Dash::solid) {
            add_box(centre, half, half_width_px, turn_rad, stroke.role, stroke.opacity);
            return;
        }
        const scene::DashPattern pattern = scene::dash_pattern(stroke);
        ShapeRecord& record =
            add(ShapeKind::dashes, centre, half, turn_rad, stroke.role, stroke.opacity);
        record.form = {static_cast<float>(half.x()), static_cast<float>(half_width_px),
                       static_cast<float>(pattern.on_px), static_cast<float>(pattern.off_px)};
    }

    Point offset_px_;
    scene::Look look_;
    std::vector<ShapeRecord>& records_;
    std::vector<OutlineTriangle> triangles_;
};

} // namespace

void append_shapes(const scene::Drawing& drawing, const Point& offset_px, scene::Look look,
                   std::vector<ShapeRecord>& records) {
    Appender appender(offset_px, look, records);
    for (const scene::Shape& shape : drawing.shapes)
        std::visit(appender, shape);
}

} // namespace steelyard::app
