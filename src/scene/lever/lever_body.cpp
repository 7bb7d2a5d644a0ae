#include "scene/lever/lever_body.h"

#include <utility>

namespace steelyard::scene {

void add_lever_beam(std::vector<Point> corners_px, const LeverSizes& sizes, LabelBoard& board,
                    std::vector<Shape>& shapes) {
    Polyline outer{std::move(corners_px), {Role::ink, sizes.beam_px}};
    Polyline inner = outer;
    inner.stroke = {Role::beam, sizes.beam_inside_px};
    for (std::size_t i = 1; i < outer.corners.size(); ++i)
        board.keep_clear(outer.corners[i - 1], outer.corners[i], sizes.beam_px);
    shapes.emplace_back(std::move(outer));
    shapes.emplace_back(std::move(inner));
}

void add_lever_axis(const Point& pin_px, bool on_stand, const LeverSizes& sizes, LabelBoard& board,
                    std::vector<Shape>& shapes) {
    const Point half(sizes.stand_half_px, 0.0);
    const Point foot = pin_px + Point(0.0, sizes.stand_px);
    if (on_stand) {
        shapes.emplace_back(Triangle{pin_px, foot - half, foot + half, Role::ink});
        board.keep_clear({pin_px - half, foot + half});
    }
    Disc pin;
    pin.centre = pin_px;
    pin.radius_px = sizes.pin_radius_px;
    pin.fill = Role::sheet;
    pin.outline = Stroke{Role::ink, 2.5};
    shapes.emplace_back(pin);
    const Point around = Point::Constant(sizes.pin_radius_px + 2.0);
    board.keep_clear({pin_px - around, pin_px + around});
}

} // namespace steelyard::scene
