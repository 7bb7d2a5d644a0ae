#include "setup/body/body_view.h"

#include "mechanics/range/pose_path.h"

#include <cmath>

namespace steelyard::setup {

const std::vector<std::string_view>& body_view_names() {
    static const std::vector<std::string_view> names{"side", "front", "above", "oblique"};
    return names;
}

const std::vector<std::string_view>& plane_view_names() {
    static const std::vector<std::string_view> names{"side", "front", "above"};
    return names;
}

BodyView best_view(const mechanics::Exercise& exercise, mechanics::Hinge axis) {
    // Less than this of an axis points at the eye: arms about it would be drawn a third too short.
    constexpr double kFarFromEndOn = 0.66;
    mechanics::Pose pose = exercise.body_case.pose;
    if (exercise.path)
        pose = mechanics::pose_at(pose, *exercise.path, 0.5);
    const mechanics::Vec3 along =
        mechanics::place(exercise.body_case.body, pose).axis(axis).cwiseAbs();
    // The eye looks along z from the side, along x from the front, along y from above.
    BodyView best = BodyView::side;
    double most = along.z();
    if (along.x() > most) {
        best = BodyView::front;
        most = along.x();
    }
    if (along.y() > most) {
        best = BodyView::above;
        most = along.y();
    }
    return most < kFarFromEndOn ? BodyView::oblique : best;
}

} // namespace steelyard::setup
