#include "scene/marks/arm_shelves.h"

#include "mechanics/constants.h"

#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kFirstShelf_px = 44.0;
/// Below the lever the ruler and the axis with its name come first.
constexpr double kFirstShelfBelow_px = 82.0;
constexpr double kShelfStep_px = 36.0;
/// An arm that leaves the lever by less than this runs along it.
constexpr double kAlongLever_rad = 12.0 * mechanics::kDegree_rad;

double angle_between(const Point& one, const Point& other) {
    return std::abs(std::atan2(one.x() * other.y() - one.y() * other.x(), one.dot(other)));
}

} // namespace

ArmMark ArmShelves::shelve(const Point& foot, const Point& point, const Point& along_line) {
    ArmMark mark{axis_, foot, along_line, Point::Zero()};
    const Point arm = foot - axis_;
    const Point to_point = point - axis_;
    if (arm.norm() < 1.0 || angle_between(arm, to_point) > kAlongLever_rad)
        return mark;
    const Point away = -along_line;
    const Point direction = arm.normalized();
    int level = 0;
    for (const Shelf& shelf : shelves_)
        if (shelf.away.dot(away) > 0.7 && shelf.direction.dot(direction) > 0.7)
            level = std::max(level, shelf.level + 1);
    shelves_.push_back({away, direction, level});
    const double first_px = away.y() > 0.5 ? kFirstShelfBelow_px : kFirstShelf_px;
    mark.shift = away * (first_px + level * kShelfStep_px);
    return mark;
}

} // namespace steelyard::scene
