#include "scene/marks/sheet_cut.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <tuple>
#include <utility>

namespace steelyard::scene {
namespace {

bool holds(const Rect& window, const Point& low, const Point& high) {
    return (low - window.low).minCoeff() >= 0.0 && (window.high - high).minCoeff() >= 0.0;
}

bool misses(const Rect& window, const Point& low, const Point& high) {
    return (high - window.low).minCoeff() <= 0.0 || (window.high - low).minCoeff() <= 0.0;
}

/// The piece of a straight stroke inside a window; empty where none is.
std::optional<std::pair<Point, Point>> piece_inside(const Rect& window, const Point& from,
                                                    const Point& to) {
    double first = 0.0;
    double last = 1.0;
    for (int axis = 0; axis < 2; ++axis) {
        const double way = to[axis] - from[axis];
        const std::array<double, 2> edges{window.low[axis] - from[axis],
                                          window.high[axis] - from[axis]};
        if (std::abs(way) < 1e-9) {
            if (edges[0] > 0.0 || edges[1] < 0.0)
                return std::nullopt;
            continue;
        }
        const auto [near, far] = std::minmax({edges[0] / way, edges[1] / way});
        first = std::max(first, near);
        last = std::min(last, far);
    }
    if (first >= last)
        return std::nullopt;
    return std::pair{Point(from + first * (to - from)), Point(from + last * (to - from))};
}

/// Appends what is left of each shape.
class Cutter {
public:
    Cutter(const Rect& window, std::vector<Shape>& kept) : window_(window), kept_(kept) {}

    void operator()(Line& line) const {
        if (const auto piece = piece_inside(window_, line.from, line.to)) {
            std::tie(line.from, line.to) = *piece;
            kept_.emplace_back(line);
        }
    }

    void operator()(Polyline& line) const {
        std::vector<Point> corners;
        const auto end_piece = [&] {
            if (corners.size() > 1)
                kept_.emplace_back(Polyline{corners, line.stroke});
            corners.clear();
        };
        for (std::size_t i = 1; i < line.corners.size(); ++i) {
            const auto piece = piece_inside(window_, line.corners[i - 1], line.corners[i]);
            if (!piece) {
                end_piece();
                continue;
            }
            if (corners.empty() || (corners.back() - piece->first).norm() > 1e-6) {
                end_piece();
                corners.push_back(piece->first);
            }
            corners.push_back(piece->second);
        }
        end_piece();
    }

    void operator()(Arc& arc) const {
        const Point reach = Point::Constant(arc.radius_px);
        if (holds(window_, arc.centre - reach, arc.centre + reach)) {
            kept_.emplace_back(arc);
            return;
        }
        constexpr int kSteps = 32;
        Polyline line{{}, arc.stroke};
        for (int i = 0; i <= kSteps; ++i) {
            const double turn_rad = arc.from_rad + (arc.to_rad - arc.from_rad) * i / kSteps;
            line.corners.push_back(arc.centre +
                                   arc.radius_px * Point(std::cos(turn_rad), std::sin(turn_rad)));
        }
        (*this)(line);
    }

    void operator()(Disc& disc) const {
        if (window_.contains(disc.centre))
            kept_.emplace_back(disc);
    }

    void operator()(Triangle& triangle) const {
        const Ring corners{triangle.a, triangle.b, triangle.c};
        if (std::all_of(corners.begin(), corners.end(),
                        [&](const Point& corner) { return window_.contains(corner); }))
            kept_.emplace_back(triangle);
        else
            add_cut(corners, triangle.fill);
    }

    void operator()(Outline& outline) const {
        Outline cut{{}, outline.fill};
        for (Ring& ring : outline.rings)
            if (Ring rest = cut_ring(std::move(ring), window_); rest.size() > 2)
                cut.rings.push_back(std::move(rest));
        if (!cut.rings.empty())
            kept_.emplace_back(std::move(cut));
    }

    void operator()(Box& box) const {
        const double cosine = std::cos(box.turn_rad);
        const double sine = std::sin(box.turn_rad);
        Ring corners;
        for (const auto& [x, y] : {std::pair(-0.5, -0.5), {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}}) {
            const Point off(x * box.size_px.x(), y * box.size_px.y());
            corners.push_back(box.centre + Point(cosine * off.x() - sine * off.y(),
                                                 sine * off.x() + cosine * off.y()));
        }
        if (std::all_of(corners.begin(), corners.end(),
                        [&](const Point& corner) { return window_.contains(corner); }))
            kept_.emplace_back(box);
        else if (box.fill)
            add_cut(std::move(corners), *box.fill);
    }

    void operator()(Label& label) const { kept_.emplace_back(std::move(label)); }

private:
    void add_cut(Ring corners, Role fill) const {
        if (Ring rest = cut_ring(std::move(corners), window_); rest.size() > 2)
            kept_.emplace_back(Outline{{std::move(rest)}, fill});
    }

    const Rect& window_;
    std::vector<Shape>& kept_;
};

} // namespace

Ring cut_ring(Ring ring, const Rect& window) {
    if (ring.empty())
        return ring;
    Point low = ring.front();
    Point high = low;
    for (const Point& corner : ring) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    if (holds(window, low, high))
        return ring;
    if (misses(window, low, high))
        return {};
    for (int axis = 0; axis < 2; ++axis)
        for (const double sign : {-1.0, 1.0}) {
            const double most = sign > 0.0 ? window.high[axis] : -window.low[axis];
            const auto over = [&](const Point& point) { return sign * point[axis] - most; };
            Ring kept;
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point& one = ring[i];
                const Point& next = ring[(i + 1) % ring.size()];
                if (over(one) <= 0.0)
                    kept.push_back(one);
                if (over(one) * over(next) < 0.0)
                    kept.emplace_back(one + over(one) / (over(one) - over(next)) * (next - one));
            }
            ring = std::move(kept);
        }
    return ring;
}

void cut_to(const Rect& window, std::size_t from, std::vector<Shape>& shapes) {
    std::vector<Shape> whole(
        std::make_move_iterator(shapes.begin() + static_cast<std::ptrdiff_t>(from)),
        std::make_move_iterator(shapes.end()));
    shapes.resize(from);
    for (Shape& shape : whole)
        std::visit(Cutter(window, shapes), shape);
}

} // namespace steelyard::scene
