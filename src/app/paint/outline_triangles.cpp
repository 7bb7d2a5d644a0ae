#include "app/paint/outline_triangles.h"

#include "scene/figure/ring_union.h"

#include <algorithm>
#include <limits>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Ring;

double cross(const Point& a, const Point& b) {
    return a.x() * b.y() - a.y() * b.x();
}

/// Twice the area of a triangle, positive when it turns as outer rings do.
double turn_of(const Point& a, const Point& b, const Point& c) {
    return cross(b - a, c - a);
}

struct Corner {
    Point at;
    bool next_on_outline; ///< the side to the next corner is one of the outline
};

/// A ring without holes, in one piece.
using Chain = std::vector<Corner>;

Chain chain_of(const Ring& ring) {
    Chain chain;
    chain.reserve(ring.size());
    for (const Point& corner : ring)
        chain.push_back({corner, true});
    return chain;
}

/// Whether two stretches cross between their ends.
bool cross_each_other(const Point& a, const Point& b, const Point& c, const Point& d) {
    return turn_of(a, b, c) * turn_of(a, b, d) < 0.0 && turn_of(c, d, a) * turn_of(c, d, b) < 0.0;
}

/// Joins a hole to the ring around it by a cut that is gone to and fro, the shortest that crosses
/// neither of them.
void join_hole(const Ring& hole, Chain& chain) {
    std::size_t from = 0;
    std::size_t to = 0;
    double shortest = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < chain.size(); ++i)
        for (std::size_t j = 0; j < hole.size(); ++j) {
            const double length = (chain[i].at - hole[j]).squaredNorm();
            if (length >= shortest)
                continue;
            bool clear = true;
            for (std::size_t k = 0; clear && k < chain.size(); ++k)
                clear = !cross_each_other(chain[i].at, hole[j], chain[k].at,
                                          chain[(k + 1) % chain.size()].at);
            for (std::size_t k = 0; clear && k < hole.size(); ++k)
                clear =
                    !cross_each_other(chain[i].at, hole[j], hole[k], hole[(k + 1) % hole.size()]);
            if (!clear)
                continue;
            shortest = length;
            from = i;
            to = j;
        }
    Chain bridge;
    for (std::size_t j = 0; j <= hole.size(); ++j)
        bridge.push_back({hole[(to + j) % hole.size()], j < hole.size()});
    bridge.push_back(chain[from]);
    chain[from].next_on_outline = false;
    chain.insert(chain.begin() + static_cast<std::ptrdiff_t>(from) + 1, bridge.begin(),
                 bridge.end());
}

/// Takes ears off a chain until a triangle is left.
class EarCutter {
public:
    EarCutter(Chain chain, std::vector<OutlineTriangle>& triangles)
        : chain_(std::move(chain)), triangles_(triangles), before_(chain_.size()),
          after_(chain_.size()) {
        for (std::size_t i = 0; i < chain_.size(); ++i) {
            before_[i] = i == 0 ? chain_.size() - 1 : i - 1;
            after_[i] = i + 1 == chain_.size() ? 0 : i + 1;
        }
    }

    void cut() {
        std::size_t left = chain_.size();
        std::size_t here = 0;
        std::size_t passed = 0; // corners since the last ear
        while (left > 3) {
            // Where nothing is an ear, for rounding, the next corner is taken for one.
            if (is_ear(here) || passed > left) {
                const std::size_t next = after_[here];
                take_off(here);
                --left;
                passed = 0;
                here = after_[next]; // the next corner would give a fan of slivers
            } else {
                here = after_[here];
                ++passed;
            }
        }
        add(here);
    }

private:
    bool is_ear(std::size_t i) const {
        const Point& a = chain_[before_[i]].at;
        const Point& b = chain_[i].at;
        const Point& c = chain_[after_[i]].at;
        if (turn_of(a, b, c) <= 0.0)
            return false;
        for (std::size_t k = after_[after_[i]]; k != before_[i]; k = after_[k]) {
            const Point& point = chain_[k].at;
            const bool inside = turn_of(a, b, point) > 0.0 && turn_of(b, c, point) > 0.0 &&
                                turn_of(c, a, point) >= 0.0;
            if (inside && point != a && point != c)
                return false;
        }
        return true;
    }

    void add(std::size_t i) {
        const Corner& a = chain_[before_[i]];
        const Corner& b = chain_[i];
        const Corner& c = chain_[after_[i]];
        const bool last = after_[after_[i]] == before_[i];
        triangles_.push_back({{a.at, b.at, c.at},
                              {a.next_on_outline, b.next_on_outline, last && c.next_on_outline}});
    }

    void take_off(std::size_t i) {
        add(i);
        chain_[before_[i]].next_on_outline = false;
        after_[before_[i]] = after_[i];
        before_[after_[i]] = before_[i];
    }

    Chain chain_;
    std::vector<OutlineTriangle>& triangles_;
    std::vector<std::size_t> before_;
    std::vector<std::size_t> after_;
};

} // namespace

void append_triangles(const scene::Outline& outline, std::vector<OutlineTriangle>& triangles) {
    for (const Ring& ring : outline.rings) {
        if (ring.size() < 3 || scene::doubled_area(ring) <= 0.0)
            continue;
        Chain chain = chain_of(ring);
        for (const Ring& hole : outline.rings)
            if (hole.size() > 2 && scene::doubled_area(hole) < 0.0 &&
                scene::is_inside(hole.front(), ring))
                join_hole(hole, chain);
        EarCutter(std::move(chain), triangles).cut();
    }
}

} // namespace steelyard::app
