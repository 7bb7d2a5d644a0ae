#include "mechanics/lever/lever_geometry.h"

#include "mechanics/portable.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace steelyard::mechanics {

namespace {

/// Below this a part of a unit vector is the rounding of its angle, also after some turns.
constexpr double kNoPart = 1.0e-15;

} // namespace

Vec2 unit_vector(double direction_rad) {
    // No double is exactly a right angle: the cosine of the nearest one is 6e-17, and a pull
    // straight down would push sideways by that much.
    const auto exact = [](double part) { return std::abs(part) < kNoPart ? 0.0 : part; };
    const portable::SineCosine parts = portable::sine_cosine(direction_rad);
    return {exact(parts.cosine), exact(parts.sine)};
}

double path_length(const std::vector<Vec2>& path_m) {
    double length_m = 0.0;
    for (std::size_t i = 1; i < path_m.size(); ++i)
        length_m += (path_m[i] - path_m[i - 1]).norm();
    return length_m;
}

Vec2 point_at(const std::vector<Vec2>& path_m, double at_m) {
    assert(path_m.size() >= 2);
    double remaining_m = std::max(at_m, 0.0);
    for (std::size_t i = 1; i < path_m.size(); ++i) {
        const Vec2 side = path_m[i] - path_m[i - 1];
        const double side_m = side.norm();
        if (remaining_m <= side_m && side_m > 0.0)
            return path_m[i - 1] + side * (remaining_m / side_m);
        remaining_m -= side_m;
    }
    return path_m.back();
}

double nearest_at(const std::vector<Vec2>& path_m, const Vec2& point_m) {
    double best_at_m = 0.0;
    double best_distance_m = std::numeric_limits<double>::max();
    double start_at_m = 0.0;
    for (std::size_t i = 1; i < path_m.size(); ++i) {
        const Vec2 side = path_m[i] - path_m[i - 1];
        const double side_m = side.norm();
        if (side_m > 0.0) {
            const double along_m =
                std::clamp((point_m - path_m[i - 1]).dot(side) / side_m, 0.0, side_m);
            const Vec2 nearest = path_m[i - 1] + side * (along_m / side_m);
            const double distance_m = (point_m - nearest).norm();
            if (distance_m < best_distance_m) {
                best_distance_m = distance_m;
                best_at_m = start_at_m + along_m;
            }
        }
        start_at_m += side_m;
    }
    return best_at_m;
}

Vec2 path_centroid(const std::vector<Vec2>& path_m) {
    Vec2 moment = Vec2::Zero();
    double length_m = 0.0;
    for (std::size_t i = 1; i < path_m.size(); ++i) {
        const double side_m = (path_m[i] - path_m[i - 1]).norm();
        moment += side_m * 0.5 * (path_m[i] + path_m[i - 1]);
        length_m += side_m;
    }
    return length_m > 0.0 ? Vec2(moment / length_m) : path_m.front();
}

double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}

double torque_about(const Vec2& axis_m, const AppliedForce& force) {
    return cross(force.point_m - axis_m, force.force_N);
}

double moment_arm(const Vec2& axis_m, const Vec2& point_m, const Vec2& unit_direction) {
    return std::abs(cross(point_m - axis_m, unit_direction));
}

Vec2 foot_of_arm(const Vec2& axis_m, const Vec2& point_m, const Vec2& unit_direction) {
    return point_m - unit_direction * (point_m - axis_m).dot(unit_direction);
}

} // namespace steelyard::mechanics
