#include "app/paint/list_painter.h"

#include "app/paint/label_painter.h"

#include <cassert>

namespace steelyard::app {

namespace {

struct ListPainter {
    scene::Point offset_px;
    const Style& style;
    ImDrawList& list;

    ImVec2 place(const scene::Point& at) const {
        return {static_cast<float>(at.x() + offset_px.x()),
                static_cast<float>(at.y() + offset_px.y())};
    }
    ImU32 ink(const scene::Stroke& stroke) const { return style.mark(stroke.role, stroke.opacity); }

    void operator()(const scene::Line& line) const {
        list.AddLine(place(line.from), place(line.to), ink(line.stroke),
                     static_cast<float>(line.stroke.width_px));
    }
    void operator()(const scene::Box& box) const {
        const ImVec2 low = place(box.centre - 0.5 * box.size_px);
        const ImVec2 high = place(box.centre + 0.5 * box.size_px);
        const auto corner = static_cast<float>(box.corner_px);
        if (box.fill)
            list.AddRectFilled(low, high, style.mark(*box.fill, box.fill_opacity), corner);
        if (box.outline)
            list.AddRect(low, high, ink(*box.outline), corner, 0,
                         static_cast<float>(box.outline->width_px));
    }
    void operator()(const scene::Disc& disc) const {
        const auto radius = static_cast<float>(disc.radius_px);
        if (disc.fill)
            list.AddCircleFilled(place(disc.centre), radius,
                                 style.mark(*disc.fill, disc.fill_opacity));
        if (disc.outline)
            list.AddCircle(place(disc.centre), radius, ink(*disc.outline), 0,
                           static_cast<float>(disc.outline->width_px));
    }
    void operator()(const scene::Label& label) const { paint_label(label, offset_px, style, list); }
    template <typename Other> void operator()(const Other& /*shape*/) const { assert(false); }
};

} // namespace

void paint_in_list(const std::vector<scene::Shape>& shapes, const scene::Point& offset_px,
                   const Style& style, ImDrawList& list) {
    for (const scene::Shape& shape : shapes)
        std::visit(ListPainter{offset_px, style, list}, shape);
}

} // namespace steelyard::app
