#include "publish/pictures/svg.h"

#include "mechanics/constants.h"
#include "publish/files/written_text.h"
#include "publish/pictures/drawing_check.h"
#include "scene/dash.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::publish {
namespace {

using namespace scene;

/// A hundredth of a pixel is finer than any eye; zeros at the end are left out.
std::string number(double value) {
    std::string text = fmt::format("{:.2f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text.pop_back();
    return text == "-0" ? "0" : text;
}

/// Of the many corners of a figure: a tenth of a pixel, half as long to write.
std::string tenth(double value) {
    return number(0.1 * std::round(10.0 * value));
}

std::string hex(Rgb colour) {
    return fmt::format("#{:02X}{:02X}{:02X}", colour.red, colour.green, colour.blue);
}

std::string opacity(const char* attribute, double value) {
    return value < 1.0 ? fmt::format(" {}=\"{}\"", attribute, number(std::max(0.0, value))) : "";
}

std::string turn(double turn_rad, const Point& about) {
    if (turn_rad == 0.0)
        return "";
    return fmt::format(" transform=\"rotate({} {} {})\"", number(turn_rad * 180.0 / mechanics::kPi),
                       number(about.x()), number(about.y()));
}

Point on_circle(const Arc& arc, double angle_rad) {
    return arc.centre + arc.radius_px * Point(std::cos(angle_rad), std::sin(angle_rad));
}

/// Writes one shape at a time as an element.
class SvgShapes {
public:
    explicit SvgShapes(Look look) : look_(look) {}

    std::string operator()(const Line& line) const {
        return fmt::format(R"(<line x1="{}" y1="{}" x2="{}" y2="{}"{}/>)", number(line.from.x()),
                           number(line.from.y()), number(line.to.x()), number(line.to.y()),
                           stroke(line.stroke));
    }

    std::string operator()(const Polyline& polyline) const {
        return fmt::format(R"(<polyline points="{}" fill="none"{}/>)", points(polyline.corners),
                           stroke(polyline.stroke));
    }

    std::string operator()(const Arc& arc) const {
        const double sweep_rad = arc.to_rad - arc.from_rad;
        if (std::abs(sweep_rad) >= 2.0 * mechanics::kPi) {
            return fmt::format(R"(<circle cx="{}" cy="{}" r="{}" fill="none"{}/>)",
                               number(arc.centre.x()), number(arc.centre.y()),
                               number(arc.radius_px), stroke(arc.stroke));
        }
        const Point from = on_circle(arc, arc.from_rad);
        const Point to = on_circle(arc, arc.to_rad);
        return fmt::format(R"(<path d="M{} {}A{} {} 0 {} {} {} {}" fill="none"{}/>)",
                           number(from.x()), number(from.y()), number(arc.radius_px),
                           number(arc.radius_px), std::abs(sweep_rad) > mechanics::kPi ? 1 : 0,
                           sweep_rad > 0.0 ? 1 : 0, number(to.x()), number(to.y()),
                           stroke(arc.stroke));
    }

    std::string operator()(const Disc& disc) const {
        return fmt::format(R"(<circle cx="{}" cy="{}" r="{}"{}{}/>)", number(disc.centre.x()),
                           number(disc.centre.y()), number(disc.radius_px),
                           fill(disc.fill, disc.fill_opacity), outline(disc.outline));
    }

    std::string operator()(const Triangle& triangle) const {
        return fmt::format(R"(<polygon points="{}"{}/>)",
                           points({triangle.a, triangle.b, triangle.c}),
                           fill(triangle.fill, triangle.opacity));
    }

    std::string operator()(const Outline& outline) const {
        std::string path;
        for (const Ring& ring : outline.rings) {
            for (const Point& corner : ring)
                path += fmt::format("{}{} {}", &corner == ring.data() ? "M" : "L",
                                    tenth(corner.x()), tenth(corner.y()));
            path += "Z";
        }
        return fmt::format(R"(<path d="{}"{}/>)", path, fill(outline.fill, 1.0));
    }

    std::string operator()(const Box& box) const {
        const Point corner = box.centre - 0.5 * box.size_px;
        return fmt::format(R"(<rect x="{}" y="{}" width="{}" height="{}" rx="{}"{}{}{}/>)",
                           number(corner.x()), number(corner.y()), number(box.size_px.x()),
                           number(box.size_px.y()), number(box.corner_px),
                           turn(box.turn_rad, box.centre), fill(box.fill, box.fill_opacity),
                           outline(box.outline));
    }

    std::string operator()(const Label& label) const {
        return fmt::format(R"(<text x="{}" y="{}" font-size="{}"{}{} fill="{}"{}>{}</text>)",
                           number(label.at.x()), number(label.at.y()),
                           number(text_height_px(label.size)),
                           label.strong ? R"( font-weight="600")" : "", anchor(label.align),
                           hex(text_colour_of(label.role, look_)), turn(label.turn_rad, label.at),
                           xml_escaped(label.text));
    }

private:
    std::string stroke(const Stroke& stroke) const {
        std::string text = fmt::format(
            R"( stroke="{}" stroke-width="{}" stroke-linecap="round" stroke-linejoin="round")",
            hex(colour_of(stroke.role, look_)), number(stroke.width_px));
        if (stroke.dash != Dash::solid) {
            const DashPattern dash = dash_pattern(stroke);
            text += fmt::format(R"( stroke-dasharray="{} {}")", number(dash.on_px),
                                number(dash.off_px));
        }
        return text + opacity("stroke-opacity", stroke.opacity);
    }

    std::string outline(const std::optional<Stroke>& rim) const {
        return rim ? stroke(*rim) : std::string();
    }

    std::string fill(const std::optional<Role>& role, double fill_opacity) const {
        if (!role)
            return R"( fill="none")";
        return fmt::format(R"( fill="{}")", hex(colour_of(*role, look_))) +
               opacity("fill-opacity", fill_opacity);
    }

    static std::string points(const std::vector<Point>& corners) {
        std::string text;
        for (const Point& corner : corners) {
            text += fmt::format("{}{},{}", text.empty() ? "" : " ", number(corner.x()),
                                number(corner.y()));
        }
        return text;
    }

    static const char* anchor(Align align) {
        switch (align) {
        case Align::left:
            return "";
        case Align::centre:
            return R"( text-anchor="middle")";
        case Align::right:
            return R"( text-anchor="end")";
        }
        return "";
    }

    Look look_;
};

std::string opening(const Drawing& drawing, const SvgStyle& style) {
    const std::string id = xml_escaped(style.id_prefix);
    const Point shown = style.shown_px.value_or(drawing.size_px);
    const std::string width = number(drawing.size_px.x());
    const std::string height = number(drawing.size_px.y());
    std::string text;
    if (style.own_file)
        text += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    text +=
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}\" height=\"{1}\" "
                    "viewBox=\"0 0 {0} {1}\" role=\"img\" aria-labelledby=\"{2}-title {2}-text\" "
                    "font-family=\"Inter, 'Noto Sans', 'DejaVu Sans', sans-serif\" "
                    "style=\"font-variant-numeric:tabular-nums\">\n",
                    width, height, id, number(shown.x()), number(shown.y()));
    text += fmt::format("<title id=\"{}-title\">{}</title>\n", id, xml_escaped(drawing.title));
    text += fmt::format("<desc id=\"{}-text\">{}</desc>\n", id, xml_escaped(drawing.description));
    if (drawing.has_sheet)
        text += fmt::format("<rect width=\"{}\" height=\"{}\" fill=\"{}\"/>\n", width, height,
                            hex(colour_of(Role::sheet, style.look)));
    return text;
}

} // namespace

tl::expected<std::string, PublishError> svg_of(const Drawing& drawing, const SvgStyle& style) {
    if (auto fault = fault_in(drawing))
        return tl::make_unexpected(std::move(*fault));
    std::string text = opening(drawing, style);
    const SvgShapes shapes(style.look);
    for (const Shape& shape : drawing.shapes) {
        text += std::visit(shapes, shape);
        text += '\n';
    }
    text += "</svg>\n";
    return text;
}

} // namespace steelyard::publish
