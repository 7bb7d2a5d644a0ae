#include "paint/picture/painter.h"

#include "mechanics/constants.h"
#include "paint/type/typesetting.h"
#include "publish/pictures/drawing_check.h"
#include "scene/dash.h"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

namespace steelyard::paint {
using namespace publish;
namespace {

using namespace scene;

/// Paints one shape at a time.
class ShapePainter {
public:
    ShapePainter(cairo_t* surface, const PaintStyle& style)
        : surface_(surface), style_(style), typesetter_(surface, style.family) {}

    void operator()(const Line& line) const {
        cairo_new_path(surface_);
        cairo_move_to(surface_, line.from.x(), line.from.y());
        cairo_line_to(surface_, line.to.x(), line.to.y());
        stroke(line.stroke);
    }

    void operator()(const Polyline& polyline) const {
        cairo_new_path(surface_);
        for (const Point& corner : polyline.corners)
            cairo_line_to(surface_, corner.x(), corner.y());
        stroke(polyline.stroke);
    }

    void operator()(const Arc& arc) const {
        cairo_new_path(surface_);
        // Cairo's angles turn from +x to +y, which on the sheet is clockwise, as ours do.
        const auto draw = arc.to_rad > arc.from_rad ? cairo_arc : cairo_arc_negative;
        draw(surface_, arc.centre.x(), arc.centre.y(), arc.radius_px, arc.from_rad, arc.to_rad);
        stroke(arc.stroke);
    }

    void operator()(const Disc& disc) const {
        cairo_new_path(surface_);
        cairo_arc(surface_, disc.centre.x(), disc.centre.y(), disc.radius_px, 0.0,
                  2.0 * mechanics::kPi);
        cairo_close_path(surface_);
        fill_and_outline(disc.fill, disc.fill_opacity, disc.outline);
    }

    void operator()(const Triangle& triangle) const {
        cairo_new_path(surface_);
        for (const Point& corner : {triangle.a, triangle.b, triangle.c})
            cairo_line_to(surface_, corner.x(), corner.y());
        cairo_close_path(surface_);
        fill_and_outline(triangle.fill, triangle.opacity, std::nullopt);
    }

    void operator()(const Outline& outline) const {
        cairo_new_path(surface_);
        for (const Ring& ring : outline.rings) {
            cairo_new_sub_path(surface_);
            for (const Point& corner : ring)
                cairo_line_to(surface_, corner.x(), corner.y());
            cairo_close_path(surface_);
        }
        fill_and_outline(outline.fill, 1.0, std::nullopt);
    }

    void operator()(const Box& box) const {
        cairo_save(surface_);
        cairo_translate(surface_, box.centre.x(), box.centre.y());
        cairo_rotate(surface_, box.turn_rad);
        rounded_rectangle(0.5 * box.size_px, box.corner_px);
        cairo_restore(surface_); // keeps the path, so that the outline is not turned twice
        fill_and_outline(box.fill, box.fill_opacity, box.outline);
    }

    void operator()(const Label& label) const {
        set_colour(surface_, text_colour_of(label.role, style_.look));
        typesetter_.paint_label(surface_, label);
    }

private:
    void rounded_rectangle(const Point& half, double corner_px) const {
        const double quarter = 0.5 * mechanics::kPi;
        const double r = std::clamp(corner_px, 0.0, std::max(0.0, half.minCoeff()));
        cairo_new_path(surface_);
        cairo_arc(surface_, half.x() - r, -half.y() + r, r, -quarter, 0.0);
        cairo_arc(surface_, half.x() - r, half.y() - r, r, 0.0, quarter);
        cairo_arc(surface_, -half.x() + r, half.y() - r, r, quarter, 2.0 * quarter);
        cairo_arc(surface_, -half.x() + r, -half.y() + r, r, 2.0 * quarter, 3.0 * quarter);
        cairo_close_path(surface_);
    }

    void stroke(const Stroke& stroke) const {
        if (stroke.width_px <= 0.0) {
            cairo_new_path(surface_);
            return;
        }
        const DashPattern dash = dash_pattern(stroke);
        const double lengths[] = {dash.on_px, dash.off_px};
        cairo_set_dash(surface_, lengths, stroke.dash == Dash::solid ? 0 : 2, 0.0);
        cairo_set_line_cap(surface_, CAIRO_LINE_CAP_ROUND);
        cairo_set_line_join(surface_, CAIRO_LINE_JOIN_ROUND);
        cairo_set_line_width(surface_, stroke.width_px);
        set_colour(surface_, colour_of(stroke.role, style_.look), stroke.opacity);
        cairo_stroke(surface_);
    }

    void fill_and_outline(const std::optional<Role>& fill, double fill_opacity,
                          const std::optional<Stroke>& outline) const {
        if (fill) {
            set_colour(surface_, colour_of(*fill, style_.look), fill_opacity);
            cairo_fill_preserve(surface_);
        }
        if (outline)
            stroke(*outline);
        cairo_new_path(surface_);
    }

    cairo_t* surface_;
    const PaintStyle& style_;
    Typesetter typesetter_;
};

} // namespace

void set_colour(cairo_t* surface, Rgb colour, double opacity) {
    cairo_set_source_rgba(surface, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                          opacity);
}

void paint_drawing(cairo_t* surface, const Drawing& drawing, const PaintStyle& style) {
    cairo_save(surface);
    cairo_rectangle(surface, 0.0, 0.0, drawing.size_px.x(), drawing.size_px.y());
    cairo_clip(surface);
    if (style.sheet && drawing.has_sheet) {
        set_colour(surface, colour_of(Role::sheet, style.look));
        cairo_paint(surface);
    }
    const ShapePainter painter(surface, style);
    for (const Shape& shape : drawing.shapes)
        std::visit(painter, shape);
    cairo_restore(surface);
}

void paint_fitted(cairo_t* surface, const scene::Drawing& drawing, const PaintStyle& style,
                  PictureSize size) {
    if (drawing.has_sheet) {
        set_colour(surface, scene::colour_of(scene::Role::sheet, style.look));
        cairo_paint(surface);
    }
    const double scale =
        std::min(size.width_px / drawing.size_px.x(), size.height_px / drawing.size_px.y());
    cairo_translate(surface, 0.5 * (size.width_px - scale * drawing.size_px.x()),
                    0.5 * (size.height_px - scale * drawing.size_px.y()));
    cairo_scale(surface, scale, scale);
    paint_drawing(surface, drawing, style);
}

} // namespace steelyard::paint
