#include "scene/body/axis_rod.h"

#include "mechanics/constants.h"

#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kHalfRod_m = 0.19;
constexpr double kCircle_m = 0.15;
constexpr double kAlong = 0.94; ///< looked along more than this the rod is a point

} // namespace

void add_axis_rod(const mechanics::Placement& placement, mechanics::Hinge hinge,
                  const BodyStage& stage, const Rect& room, std::vector<Shape>& shapes) {
    const Vec3 axis = placement.axis(hinge);
    const Vec3 joint_m = placement.axis_point_m(hinge);
    const double toward = std::abs(axis.dot(stage.camera.toward_eye()));
    if (toward > kAlong)
        return;
    const bool is_upright = std::abs(axis.dot(stage.camera.up)) > 0.9;
    const Vec3 across = axis.cross(is_upright ? stage.camera.right : stage.camera.up).normalized();
    const Vec3 third = axis.cross(across);
    constexpr int kCorners = 48;
    Polyline circle{{}, {Role::quiet_ink, 1.5, Dash::solid, 0.55}};
    for (int i = 0; i <= kCorners; ++i) {
        const double turn_rad = 2.0 * mechanics::kPi * i / kCorners;
        circle.corners.push_back(stage.to_sheet(
            joint_m + kCircle_m * (std::cos(turn_rad) * across + std::sin(turn_rad) * third)));
    }
    const Point joint = stage.to_sheet(joint_m);
    const auto kept = [&](const Point& place) {
        return room.contains(joint) ? room.last_inside(joint, place) : place;
    };
    for (Point& corner : circle.corners)
        corner = kept(corner);
    const Point from = kept(stage.to_sheet(joint_m - kHalfRod_m * axis));
    const Point to = kept(stage.to_sheet(joint_m + kHalfRod_m * axis));
    shapes.emplace_back(std::move(circle));
    shapes.emplace_back(Line{from, to, {Role::sheet, 6.0, Dash::solid, 0.8}});
    shapes.emplace_back(Line{from, to, {Role::ink, 3.0}});
}

} // namespace steelyard::scene
