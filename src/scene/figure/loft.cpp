#include "scene/figure/loft.h"

#include "mechanics/constants.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard::scene {

namespace {

/// A chord may pass a curve at this distance [px].
constexpr double kFine_px = 0.15;

double cross(const Point& a, const Point& b) {
    return a.x() * b.y() - a.y() * b.x();
}

/// Half sizes of a section on the sheet: to its side, and to its front and back on the mean.
struct Girth {
    Point across;
    Point deep;

    double radius_px() const { return std::max(across.norm(), deep.norm()); }
};

/// Directions all round in which the farthest points of an ellipse lie evenly about it, so that
/// its flat sides are no coarser than its ends; none of them exactly along the axis, where a
/// section that is seen from its edge has no one farthest point. The first half looks to the axis'
/// left, from the axis' end to its start, the second to its right.
std::vector<Point> directions_about(const Point& axis, const Girth& girth) {
    const double radius_px = std::max(girth.radius_px(), 1e-6);
    const auto half = static_cast<std::size_t>(
        std::clamp(0.5 * mechanics::kPi * std::sqrt(radius_px / (2.0 * kFine_px)), 7.0, 40.0));
    // A section seen from its edge has no inverse: it counts as a little thicker.
    Eigen::Matrix2d shape;
    shape << girth.across, girth.deep;
    const Eigen::Matrix2d spread =
        (shape * shape.transpose() + 0.01 * radius_px * radius_px * Eigen::Matrix2d::Identity())
            .inverse()
            .llt()
            .matrixL();
    const Point left_of{-axis.y(), axis.x()};
    std::vector<Point> directions;
    directions.reserve(2 * half);
    for (std::size_t i = 0; i < half; ++i) {
        const double turn_rad =
            mechanics::kPi * (static_cast<double>(i) + 0.5037) / static_cast<double>(half);
        Point way = (spread * Point(std::cos(turn_rad), std::sin(turn_rad))).normalized();
        if (way.dot(left_of) < 0.0)
            way = -way;
        directions.push_back(way);
    }
    std::sort(directions.begin(), directions.end(),
              [&](const Point& a, const Point& b) { return a.dot(axis) > b.dot(axis); });
    for (std::size_t i = 0; i < half; ++i)
        directions.push_back(-directions[half - 1 - i]);
    return directions;
}

/// The farthest points of all sections in all directions, by section.
struct Reach {
    Point axis; ///< unit
    std::vector<Point> directions;
    std::vector<Point> farthest;

    std::size_t count() const { return farthest.size() / directions.size(); }
    const Point& at(std::size_t section, std::size_t direction) const {
        return farthest[section * directions.size() + direction];
    }
};

/// The outline as two heights over a row of places along the axis.
class Envelope {
public:
    explicit Envelope(const Reach& reach) : reach_(reach), half_(reach.directions.size() / 2) {
        double low = std::numeric_limits<double>::max();
        double high = -low;
        for (const Point& point : reach.farthest) {
            const double along = point.dot(reach.axis);
            low = std::min(low, along);
            high = std::max(high, along);
        }
        set_places(low, high);
        left_.assign(places_.size(), -std::numeric_limits<double>::max());
        right_ = left_;
        for (std::size_t i = 0; i + 1 < reach.count(); ++i) {
            raise(i, 0, 1.0, left_);
            raise(i, half_, -1.0, right_);
        }
    }

    Ring corners() const {
        const Point left_of{-reach_.axis.y(), reach_.axis.x()};
        Ring ring;
        ring.reserve(2 * places_.size());
        // At an end one side may have no corner.
        const auto add = [&](std::size_t i, double side, const std::vector<double>& heights) {
            if (heights[i] > -std::numeric_limits<double>::max())
                ring.emplace_back(places_[i] * reach_.axis + side * heights[i] * left_of);
        };
        for (std::size_t i = 0; i < places_.size(); ++i)
            add(i, -1.0, right_);
        for (std::size_t i = places_.size(); i-- > 0;)
            add(i, 1.0, left_);
        return ring;
    }

private:
    /// Places from end to end, closer together at the round ends, and where each section is
    /// widest: a step from a wide one to a narrow one keeps its edge.
    void set_places(double low, double high) {
        const auto count =
            static_cast<std::size_t>(std::clamp(24.0 + (high - low) / 4.0, 24.0, 120.0));
        places_.reserve(count + 2 * reach_.count());
        for (std::size_t i = 0; i < count; ++i)
            places_.push_back(
                std::lerp(low, high,
                          0.5 - 0.5 * std::cos(mechanics::kPi * static_cast<double>(i) /
                                               static_cast<double>(count - 1))));
        for (std::size_t section = 0; section < reach_.count(); ++section)
            for (const std::size_t direction : {half_ / 2, half_ + half_ / 2})
                places_.push_back(
                    std::clamp(reach_.at(section, direction).dot(reach_.axis), low, high));
        std::sort(places_.begin(), places_.end());
        constexpr double kSame_px = 0.05;
        places_.erase(std::unique(places_.begin(), places_.end(),
                                  [](double a, double b) { return b - a < kSame_px; }),
                      places_.end());
        places_.front() = low;
        places_.back() = high;
    }

    /// Raises one side to the hull of a section and the next.
    void raise(std::size_t section, std::size_t first, double side,
               std::vector<double>& heights) const {
        const Point left_of{-reach_.axis.y(), reach_.axis.x()};
        const auto corner = [&](std::size_t i) {
            const Point& direction = reach_.directions[first + i];
            const Point& one = reach_.at(section, first + i);
            const Point& other = reach_.at(section + 1, first + i);
            const Point& far = one.dot(direction) > other.dot(direction) ? one : other;
            return Point(far.dot(reach_.axis), side * far.dot(left_of));
        };
        Point before = corner(0); // the corners come from the far end of the axis to the near one
        std::size_t place = static_cast<std::size_t>(
            std::upper_bound(places_.begin(), places_.end(), before.x()) - places_.begin());
        for (std::size_t i = 0; i < half_; ++i) {
            const Point here = corner(i);
            while (place > 0 && places_[place - 1] >= here.x()) {
                --place;
                const double span = before.x() - here.x();
                const double share = span > 1e-12 ? (places_[place] - here.x()) / span : 0.0;
                heights[place] =
                    std::max(heights[place], std::lerp(here.y(), before.y(), std::min(share, 1.0)));
            }
            before = here;
        }
    }

    const Reach& reach_;
    std::size_t half_;
    std::vector<double> places_;
    std::vector<double> left_;
    std::vector<double> right_;
};

/// Leaves out corners that lie on the line between those that stay.
Ring simplified(const Ring& ring) {
    constexpr double kOnLine_px = 0.25;
    if (ring.size() < 4)
        return ring;
    Ring kept{ring.front()};
    std::size_t from = 0;
    for (std::size_t to = 2; to <= ring.size(); ++to) {
        const Point& end = ring[to % ring.size()];
        const Point span = end - ring[from];
        const double length = std::max(span.norm(), 1e-12);
        const bool bends = std::any_of(
            ring.begin() + static_cast<std::ptrdiff_t>(from) + 1,
            ring.begin() + static_cast<std::ptrdiff_t>(to), [&](const Point& between) {
                return std::abs(cross(span, between - ring[from])) > kOnLine_px * length;
            });
        if (bends) {
            from = to - 1;
            kept.push_back(ring[from]);
        }
    }
    return kept;
}

template <typename Any>
Ring outline_along(std::span<const Any> sections, const Point& along, const Girth& girth,
                   Point (*farthest)(const Any&, const Point&)) {
    Reach reach;
    reach.axis = along.norm() > 1e-6 ? Point(along.normalized()) : Point(1.0, 0.0);
    reach.directions = directions_about(reach.axis, girth);
    reach.farthest.reserve(sections.size() * reach.directions.size());
    for (const Any& section : sections)
        for (const Point& direction : reach.directions)
            reach.farthest.push_back(farthest(section, direction));
    return simplified(Envelope(reach).corners());
}

Vec3 between(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& d, double t) {
    return 0.5 * (2.0 * b + (c - a) * t + (2.0 * a - 5.0 * b + 4.0 * c - d) * t * t +
                  (3.0 * b - a - 3.0 * c + d) * t * t * t);
}

} // namespace

Section ball(const Vec3& centre_m, double radius_m, const Camera& camera) {
    return {centre_m, radius_m * camera.right, radius_m * camera.up, -radius_m * camera.up};
}

Point FlatSection::farthest(const Point& direction) const {
    const double sideways = across.dot(direction);
    const double forward = front.dot(direction);
    const Point& deep = forward >= 0.0 ? front : back;
    const double deeply = forward >= 0.0 ? forward : back.dot(direction);
    const double length = std::sqrt(sideways * sideways + deeply * deeply);
    if (length < 1e-12)
        return centre;
    return centre + (sideways * across + deeply * deep) / length;
}

FlatSection flat(const Section& section, const BodyStage& stage) {
    const auto arrow = [&](const Vec3& vector_m) {
        return Point(stage.px_per_m *
                     Point(stage.camera.right.dot(vector_m), -stage.camera.up.dot(vector_m)));
    };
    return {stage.to_sheet(section.centre_m), arrow(section.across_m), arrow(section.front_m),
            arrow(section.back_m)};
}

Ring loft_outline(std::span<const Section> sections, const BodyStage& stage) {
    std::vector<FlatSection> flat_ones;
    flat_ones.reserve(sections.size());
    Girth widest{Point::Zero(), Point::Zero()};
    for (const Section& section : sections) {
        const FlatSection& one = flat_ones.emplace_back(flat(section, stage));
        const Girth girth{one.across, 0.5 * (one.front - one.back)};
        if (girth.radius_px() > widest.radius_px())
            widest = girth;
    }
    return outline_along<FlatSection>(
        flat_ones, flat_ones.back().centre - flat_ones.front().centre, widest,
        [](const FlatSection& section, const Point& way) { return section.farthest(way); });
}

Ring loft_outline(std::span<const Ring> sections, const Point& along) {
    double radius_px = 0.0;
    for (const Ring& section : sections)
        for (const Point& corner : section)
            radius_px = std::max(radius_px, 0.5 * (corner - section.front()).norm());
    return outline_along<Ring>(sections, along, {Point(radius_px, 0.0), Point(0.0, radius_px)},
                               [](const Ring& section, const Point& way) {
                                   return *std::max_element(section.begin(), section.end(),
                                                            [&](const Point& a, const Point& b) {
                                                                return a.dot(way) < b.dot(way);
                                                            });
                               });
}

std::vector<Section> smoothed(std::span<const Section> sections, int steps) {
    std::vector<Section> all;
    all.reserve(sections.size() * static_cast<std::size_t>(steps));
    for (std::size_t i = 0; i + 1 < sections.size(); ++i) {
        const Section& a = sections[i == 0 ? 0 : i - 1];
        const Section& b = sections[i];
        const Section& c = sections[i + 1];
        const Section& d = sections[std::min(i + 2, sections.size() - 1)];
        for (int step = 0; step < steps; ++step) {
            const double t = static_cast<double>(step) / steps;
            all.push_back({between(a.centre_m, b.centre_m, c.centre_m, d.centre_m, t),
                           between(a.across_m, b.across_m, c.across_m, d.across_m, t),
                           between(a.front_m, b.front_m, c.front_m, d.front_m, t),
                           between(a.back_m, b.back_m, c.back_m, d.back_m, t)});
        }
    }
    all.push_back(sections.back());
    return all;
}

} // namespace steelyard::scene
