#include "scene/figure/ring_union.h"

#include <algorithm>
#include <optional>

namespace steelyard::scene {

namespace {

double turn_of(const Point& a, const Point& b) {
    return a.x() * b.y() - a.y() * b.x();
}

struct Bounds {
    Point low{1e18, 1e18};
    Point high{-1e18, -1e18};

    void take_in(const Point& point) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
    bool meets(const Bounds& other) const {
        return (low.array() <= other.high.array()).all() &&
               (other.low.array() <= high.array()).all();
    }
};

Bounds bounds_of(const Ring& ring) {
    Bounds bounds;
    for (const Point& corner : ring)
        bounds.take_in(corner);
    return bounds;
}

/// Where one ring crosses another: on which of its edges, how far along it, and which crossing.
struct Cut {
    std::size_t edge;
    double along; ///< 0 to 1
    std::size_t crossing;
};

/// A run of a ring from one crossing to the next.
struct Run {
    std::size_t ring;
    std::size_t first; ///< index into the ring's cuts
};

class Union {
public:
    explicit Union(std::vector<Ring> rings) : rings_(std::move(rings)), cuts_(rings_.size()) {
        for (const Ring& ring : rings_)
            bounds_.push_back(bounds_of(ring));
        for (std::size_t i = 0; i < rings_.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                if (bounds_[i].meets(bounds_[j]))
                    cross_rings(i, j);
        for (std::vector<Cut>& cuts : cuts_)
            std::sort(cuts.begin(), cuts.end(), [](const Cut& a, const Cut& b) {
                return a.edge != b.edge ? a.edge < b.edge : a.along < b.along;
            });
    }

    /// Empty when the crossings do not fit together.
    std::optional<std::vector<Ring>> outline() {
        std::vector<Ring> whole;
        leaving_.assign(places_.size(), std::nullopt);
        for (std::size_t i = 0; i < rings_.size(); ++i) {
            if (cuts_[i].empty()) {
                if (is_outside_others(rings_[i].front(), i))
                    whole.push_back(rings_[i]);
                continue;
            }
            for (std::size_t k = 0; k < cuts_[i].size(); ++k) {
                if (!is_outside_others(middle_of_first_piece({i, k}), i))
                    continue;
                auto& leaving = leaving_[cuts_[i][k].crossing];
                if (leaving)
                    return std::nullopt;
                leaving = Run{i, k};
            }
        }
        for (std::size_t start = 0; start < places_.size(); ++start)
            if (leaving_[start]) {
                auto ring = follow(start);
                if (!ring)
                    return std::nullopt;
                whole.push_back(*std::move(ring));
            }
        return whole;
    }

private:
    const Point& corner(std::size_t ring, std::size_t i) const {
        return rings_[ring][i % rings_[ring].size()];
    }

    void cross_rings(std::size_t one, std::size_t other) {
        for (std::size_t i = 0; i < rings_[one].size(); ++i) {
            const Point& from = corner(one, i);
            const Point way = corner(one, i + 1) - from;
            Bounds edge;
            edge.take_in(from);
            edge.take_in(corner(one, i + 1));
            if (edge.meets(bounds_[other]))
                cross_edge(one, i, from, way, edge, other);
        }
    }

    void cross_edge(std::size_t one, std::size_t i, const Point& from, const Point& way,
                    const Bounds& edge, std::size_t other) {
        const Ring& ring = rings_[other];
        for (std::size_t j = 0; j < ring.size(); ++j) {
            const Point& start = ring[j];
            const Point& end = ring[j + 1 == ring.size() ? 0 : j + 1];
            if (std::max(start.x(), end.x()) < edge.low.x() ||
                std::min(start.x(), end.x()) > edge.high.x() ||
                std::max(start.y(), end.y()) < edge.low.y() ||
                std::min(start.y(), end.y()) > edge.high.y())
                continue;
            const double turn = turn_of(way, end - start);
            if (turn == 0.0)
                continue;
            const double here = turn_of(start - from, end - start) / turn;
            const double there = turn_of(start - from, way) / turn;
            if (here <= 0.0 || here >= 1.0 || there <= 0.0 || there >= 1.0)
                continue;
            cuts_[one].push_back({i, here, places_.size()});
            cuts_[other].push_back({j, there, places_.size()});
            places_.emplace_back(from + here * way);
        }
    }

    bool is_outside_others(const Point& point, std::size_t own) const {
        for (std::size_t i = 0; i < rings_.size(); ++i)
            if (i != own && (point.array() >= bounds_[i].low.array()).all() &&
                (point.array() <= bounds_[i].high.array()).all() && is_inside(point, rings_[i]))
                return false;
        return true;
    }

    Point middle_of_first_piece(const Run& run) const {
        const std::vector<Cut>& cuts = cuts_[run.ring];
        const Cut& from = cuts[run.first];
        const Cut& to = cuts[(run.first + 1) % cuts.size()];
        const bool on_one_edge = to.edge == from.edge && to.along > from.along;
        return 0.5 * (places_[from.crossing] +
                      (on_one_edge ? places_[to.crossing] : corner(run.ring, from.edge + 1)));
    }

    /// Appends a run's corners without its end.
    /// @return the crossing at its end
    std::size_t walk(const Run& run, Ring& along) const {
        const std::vector<Cut>& cuts = cuts_[run.ring];
        const Cut& from = cuts[run.first];
        const Cut& to = cuts[(run.first + 1) % cuts.size()];
        along.push_back(places_[from.crossing]);
        std::size_t steps = to.edge >= from.edge ? to.edge - from.edge
                                                 : to.edge + rings_[run.ring].size() - from.edge;
        if (steps == 0 && to.along <= from.along)
            steps = rings_[run.ring].size(); // once round: its only cut
        for (std::size_t i = 1; i <= steps; ++i)
            along.push_back(corner(run.ring, from.edge + i));
        return to.crossing;
    }

    /// The ring that leaves a crossing; its runs are used up.
    std::optional<Ring> follow(std::size_t start) {
        Ring ring;
        std::size_t here = start;
        do {
            const std::optional<Run> run = leaving_[here];
            if (!run)
                return std::nullopt;
            leaving_[here].reset();
            here = walk(*run, ring);
        } while (here != start);
        return ring;
    }

    std::vector<Ring> rings_;
    std::vector<Bounds> bounds_;
    std::vector<std::vector<Cut>> cuts_;
    std::vector<Point> places_; ///< of the crossings
    std::vector<std::optional<Run>> leaving_;
};

} // namespace

double doubled_area(const Ring& ring) {
    double sum = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i)
        sum += turn_of(ring[i], ring[(i + 1) % ring.size()]);
    return sum;
}

bool is_inside(const Point& point, const Ring& ring) {
    bool inside = false;
    for (std::size_t i = 0, before = ring.size() - 1; i < ring.size(); before = i++) {
        const Point& a = ring[i];
        const Point& b = ring[before];
        if ((a.y() > point.y()) != (b.y() > point.y()) &&
            point.x() < (b.x() - a.x()) * (point.y() - a.y()) / (b.y() - a.y()) + a.x())
            inside = !inside;
    }
    return inside;
}

std::vector<Ring> union_of(std::vector<Ring> rings) {
    constexpr double kSpeck_px2 = 0.5;
    rings.erase(std::remove_if(rings.begin(), rings.end(),
                               [](const Ring& ring) { return ring.size() < 3; }),
                rings.end());
    double aside = 0.0;
    for (Ring& ring : rings) {
        if (doubled_area(ring) < 0.0)
            std::reverse(ring.begin(), ring.end());
        // Rings of a symmetric figure share corners and edges: a ten-thousandth of a pixel parts
        // them, so that they cross or do not.
        aside += 1.37e-4;
        for (Point& corner : ring)
            corner += Point(aside, -0.618 * aside);
    }
    if (rings.size() < 2)
        return rings;
    std::optional<std::vector<Ring>> whole = Union(rings).outline();
    if (!whole)
        return rings;
    whole->erase(std::remove_if(whole->begin(), whole->end(),
                                [](const Ring& ring) {
                                    return std::abs(doubled_area(ring)) < 2.0 * kSpeck_px2;
                                }),
                 whole->end());
    return *std::move(whole);
}

} // namespace steelyard::scene
