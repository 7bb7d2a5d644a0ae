#include "scene/marks/ink_map.h"

#include "mechanics/constants.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kCell_px = 5.0;
/// Strokes are followed in steps shorter than a cell.
constexpr double kMapStep_px = 3.0;

std::size_t cells_across(double length_px) {
    return static_cast<std::size_t>(std::max(std::ceil(length_px / kCell_px), 1.0));
}

/// The cell of a coordinate, brought onto the sheet: -1 and count stand for beyond it.
std::ptrdiff_t cell_of(double at_px, std::size_t count) {
    const double cell = std::floor(at_px / kCell_px);
    return static_cast<std::ptrdiff_t>(std::clamp(cell, -1.0, static_cast<double>(count)));
}

} // namespace

/// Puts shapes on a map.
class InkMapper {
public:
    explicit InkMapper(InkMap& map) : map_(map) {}

    void operator()(const Label& /*label*/) const {}
    void operator()(const Line& line) const { add_stroke(line.from, line.to, line.stroke); }
    void operator()(const Polyline& line) const {
        for (std::size_t i = 1; i < line.corners.size(); ++i)
            add_stroke(line.corners[i - 1], line.corners[i], line.stroke);
    }
    void operator()(const Arc& arc) const {
        Point before = on_circle(arc.centre, arc.radius_px, arc.from_rad);
        constexpr int kPieces = 24;
        for (int i = 1; i <= kPieces; ++i) {
            const Point here =
                on_circle(arc.centre, arc.radius_px,
                          std::lerp(arc.from_rad, arc.to_rad, static_cast<double>(i) / kPieces));
            add_stroke(before, here, arc.stroke);
            before = here;
        }
    }
    void operator()(const Disc& disc) const {
        const double half_rim_px = disc.outline ? 0.5 * disc.outline->width_px : 0.0;
        Ring ring;
        constexpr int kDiscCorners = 24;
        for (int i = 0; i < kDiscCorners; ++i)
            ring.push_back(on_circle(disc.centre, disc.radius_px + half_rim_px,
                                     2.0 * mechanics::kPi * i / kDiscCorners));
        if (disc.fill)
            add_rings({ring});
        else
            add_rim(ring, 2.0 * half_rim_px);
    }
    void operator()(const Triangle& triangle) const {
        add_rings({{triangle.a, triangle.b, triangle.c}});
    }
    void operator()(const Outline& outline) const { add_rings(outline.rings); }
    void operator()(const Box& box) const {
        const double c = std::cos(box.turn_rad);
        const double s = std::sin(box.turn_rad);
        const Point x = 0.5 * box.size_px.x() * Point(c, s);
        const Point y = 0.5 * box.size_px.y() * Point(-s, c);
        const Ring ring{box.centre - x - y, box.centre + x - y, box.centre + x + y,
                        box.centre - x + y};
        if (box.fill)
            add_rings({ring});
        if (box.outline)
            add_rim(ring, box.outline->width_px);
    }

    void sum_up() const {
        const std::size_t wide = map_.columns_ + 1;
        map_.sums_.assign(wide * (map_.rows_ + 1), 0);
        for (std::size_t row = 0; row < map_.rows_; ++row) {
            std::uint32_t in_row = 0;
            for (std::size_t column = 0; column < map_.columns_; ++column) {
                in_row += map_.cells_[row * map_.columns_ + column];
                map_.sums_[(row + 1) * wide + column + 1] =
                    map_.sums_[row * wide + column + 1] + in_row;
            }
        }
    }

private:
    static Point on_circle(const Point& centre, double radius_px, double angle_rad) {
        return centre + radius_px * Point(std::cos(angle_rad), std::sin(angle_rad));
    }

    void mark(const Point& low_px, const Point& high_px) const {
        const std::ptrdiff_t left = std::max<std::ptrdiff_t>(cell_of(low_px.x(), map_.columns_), 0);
        const std::ptrdiff_t right = std::min<std::ptrdiff_t>(
            cell_of(high_px.x(), map_.columns_), static_cast<std::ptrdiff_t>(map_.columns_) - 1);
        const std::ptrdiff_t top = std::max<std::ptrdiff_t>(cell_of(low_px.y(), map_.rows_), 0);
        const std::ptrdiff_t bottom = std::min<std::ptrdiff_t>(
            cell_of(high_px.y(), map_.rows_), static_cast<std::ptrdiff_t>(map_.rows_) - 1);
        for (std::ptrdiff_t row = top; row <= bottom; ++row)
            for (std::ptrdiff_t column = left; column <= right; ++column)
                map_.cells_[static_cast<std::size_t>(row) * map_.columns_ +
                            static_cast<std::size_t>(column)] = 1;
    }

    void add_stroke(const Point& from, const Point& to, const Stroke& stroke) const {
        if (stroke.role != Role::sheet)
            add_stroke(from, to, stroke.width_px);
    }
    void add_stroke(const Point& from, const Point& to, double width_px) const {
        const Point half{0.5 * width_px, 0.5 * width_px};
        const Point span = to - from;
        const int steps = 1 + static_cast<int>(std::min(span.norm(), 1e5) / kMapStep_px);
        for (int i = 0; i <= steps; ++i) {
            const Point at = from + (static_cast<double>(i) / steps) * span;
            mark(at - half, at + half);
        }
    }

    void add_rim(const Ring& ring, double width_px) const {
        for (std::size_t i = 0; i < ring.size(); ++i)
            add_stroke(ring[i], ring[(i + 1) % ring.size()], width_px);
    }

    /// What rings fill together, by the nonzero rule, along the middle of every row of cells; and
    /// their rims, for what lies between two middles.
    void add_rings(const std::vector<Ring>& rings) const {
        std::vector<Crossing> crossings;
        for (const Ring& ring : rings) {
            add_rim(ring, 1.0);
            for (std::size_t i = 0; i < ring.size(); ++i)
                add_crossings(ring[i], ring[(i + 1) % ring.size()], crossings);
        }
        std::sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
            return a.row != b.row ? a.row < b.row : a.x < b.x;
        });
        int turns = 0;
        for (std::size_t i = 0; i + 1 < crossings.size(); ++i) {
            turns += crossings[i].turn; // 0 again at the end of every row
            const double y = (crossings[i].row + 0.5) * kCell_px;
            if (turns != 0)
                mark({crossings[i].x, y}, {crossings[i + 1].x, y});
        }
    }

    /// Where the edge of a ring goes through the middle of a row of cells, and which way.
    struct Crossing {
        double row;
        double x;
        int turn;
    };

    void add_crossings(const Point& from, const Point& to, std::vector<Crossing>& crossings) const {
        if (from.y() == to.y())
            return;
        const double first = std::min(from.y(), to.y()) / kCell_px - 0.5;
        const double end = std::max(from.y(), to.y()) / kCell_px - 0.5;
        const auto rows = static_cast<double>(map_.rows_);
        for (double row = std::max(std::ceil(first), 0.0); row < end && row < rows; row += 1.0) {
            const double share = ((row + 0.5) * kCell_px - from.y()) / (to.y() - from.y());
            crossings.push_back(
                {row, std::lerp(from.x(), to.x(), share), to.y() > from.y() ? 1 : -1});
        }
    }

    InkMap& map_;
};

InkMap::InkMap(const Point& size_px, const std::vector<Shape>& shapes)
    : columns_(cells_across(size_px.x())), rows_(cells_across(size_px.y())),
      cells_(columns_ * rows_, 0) {
    const InkMapper mapper(*this);
    for (const Shape& shape : shapes)
        std::visit(mapper, shape);
    mapper.sum_up();
}

double InkMap::ink_px2(const Point& low_px, const Point& high_px) const {
    const std::ptrdiff_t left = std::max<std::ptrdiff_t>(cell_of(low_px.x(), columns_), 0);
    const std::ptrdiff_t right = std::min<std::ptrdiff_t>(
        cell_of(high_px.x(), columns_), static_cast<std::ptrdiff_t>(columns_) - 1);
    const std::ptrdiff_t top = std::max<std::ptrdiff_t>(cell_of(low_px.y(), rows_), 0);
    const std::ptrdiff_t bottom = std::min<std::ptrdiff_t>(cell_of(high_px.y(), rows_),
                                                           static_cast<std::ptrdiff_t>(rows_) - 1);
    if (left > right || top > bottom)
        return 0.0;
    const std::size_t wide = columns_ + 1;
    const auto sum = [&](std::ptrdiff_t row, std::ptrdiff_t column) {
        return sums_[static_cast<std::size_t>(row) * wide + static_cast<std::size_t>(column)];
    };
    const std::uint32_t cells =
        sum(bottom + 1, right + 1) + sum(top, left) - sum(top, right + 1) - sum(bottom + 1, left);
    return kCell_px * kCell_px * cells;
}

} // namespace steelyard::scene
