#include "scene/body/body_stage.h"

#include "scene/body/body_forces.h"
#include "scene/things/held_things.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::BodyResult;
using mechanics::ForceOrigin;

/// A flat rectangle that holds everything given to it.
class Bounds {
public:
    void add(const Point& point, double radius) {
        const Point reach{radius, radius};
        low_ = low_.cwiseMin(point - reach);
        high_ = high_.cwiseMax(point + reach);
    }
    Point span() const { return high_ - low_; }
    Point middle() const { return 0.5 * (low_ + high_); }

private:
    Point low_{1e9, 1e9};
    Point high_{-1e9, -1e9};
};

/// Flesh around a joint, in fractions of height: as much as keeps limbs on the sheet.
constexpr double kFlesh = 0.05;

Point on_sheet_m(const Camera& camera, const Vec3& world_m) {
    return {camera.right.dot(world_m), camera.up.dot(world_m)};
}

Bounds bounds_of(const mechanics::BodyCase& body_case, const std::vector<BodyResult>& shown,
                 const Camera& camera) {
    const mechanics::Body& body = body_case.body;
    Bounds bounds;
    for (const BodyResult& result : shown) {
        for (const ThingReach& reach : reaches_of_things(body_case, result.placement))
            bounds.add(on_sheet_m(camera, reach.at_m), reach.radius_m);
        for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i) {
            const mechanics::SegmentFrame& frame = result.placement.segments[i];
            const double flesh_m = kFlesh * body.height_m;
            bounds.add(on_sheet_m(camera, frame.joint_m), flesh_m);
            bounds.add(on_sheet_m(camera, frame.at(body.segments[i].tip_m)), flesh_m);
        }
        for (const mechanics::BodyForce& force : result.forces)
            if (force.origin == ForceOrigin::resistance)
                bounds.add(on_sheet_m(camera, force.point_m), 0.08);
    }
    return bounds;
}

/// What turns about the joint of a hinge, with the bone before it.
void add_part(const mechanics::BodyCase& body_case, const BodyResult& result,
              mechanics::Hinge hinge, const Camera& camera, Bounds& bounds) {
    const mechanics::Body& body = body_case.body;
    const double flesh_m = kFlesh * body.height_m;
    const mechanics::Segment beyond =
        mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
    // What loads it lies at the far end; at the hip the ground does not count, or the leg would
    // fill the stage. Where nothing acts beyond it one bone tells enough.
    const bool is_hip =
        beyond == mechanics::Segment::right_thigh || beyond == mechanics::Segment::left_thigh;
    const bool is_loaded =
        beyond == mechanics::Segment::trunk ||
        std::any_of(result.forces.begin(), result.forces.end(), [&](const auto& force) {
            return mechanics::acts_distally(force, hinge) &&
                   !(is_hip && force.origin == ForceOrigin::contact);
        });
    for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i) {
        const auto segment = static_cast<mechanics::Segment>(i);
        if (segment != beyond && !(is_loaded && mechanics::is_at_or_beyond(segment, beyond)))
            continue;
        const mechanics::SegmentFrame& frame = result.placement.segments[i];
        bounds.add(on_sheet_m(camera, frame.joint_m), flesh_m);
        bounds.add(on_sheet_m(camera, frame.at(body.segments[i].tip_m)), flesh_m);
    }
    // Of the trunk as much as tells what the limb hangs from; of any other bone all.
    const mechanics::Segment before = mechanics::segment_info(beyond).parent;
    const Vec3 joint_m = result.placement.axis_point_m(hinge);
    const bool is_middle =
        before == mechanics::Segment::trunk || before == mechanics::Segment::pelvis;
    const Vec3 back_m = result.placement[before].joint_m - joint_m;
    const double most_m = is_middle ? 0.1 * body.height_m : 0.2 * body.height_m;
    const double length_m = std::max(back_m.norm(), 1e-6);
    bounds.add(on_sheet_m(camera, joint_m + back_m * (std::min(length_m, most_m) / length_m)),
               flesh_m);
    if (is_hip && !is_loaded) { // the trunk leans over it
        const mechanics::SegmentFrame& trunk = result.placement[mechanics::Segment::trunk];
        const Vec3 tip_m = trunk.at(body[mechanics::Segment::trunk].tip_m);
        bounds.add(on_sheet_m(camera, 0.5 * (trunk.joint_m + tip_m)), 2.0 * flesh_m);
    }
    constexpr double kThing_m = 0.1;
    for (const mechanics::BodyForce& force : result.forces)
        if (force.origin == ForceOrigin::resistance && mechanics::acts_distally(force, hinge))
            bounds.add(on_sheet_m(camera, force.point_m), kThing_m);
}

/// The largest resistance is drawn so long, as a part of the room's height.
constexpr double kLongestOfRoom = 0.25;

/// Chooses the scale of the arrows by the largest resistance (the ground carries more, but it is
/// not what the exercise is about), and shortens them, within reason, until all of them end above
/// what is written below.
double arrow_scale(const std::vector<BodyResult>& shown, const BodyStage& stage, double room_px) {
    constexpr double kShortest = 0.5;
    double largest_N = 0.0;
    std::vector<SeenForce> loads;
    for (const BodyResult& result : shown)
        for (const SeenForce& force : merged_forces(result, stage))
            if (!force.ground) {
                loads.push_back(force);
                largest_N = std::max(largest_N, force.force.force_N.norm());
            }
    const double wanted_px_per_N = kLongestOfRoom * room_px / (largest_N > 0.0 ? largest_N : 100.0);
    double part = 1.0;
    for (const SeenForce& load : loads) {
        const double down_px = -wanted_px_per_N * stage.camera.up.dot(load.force.force_N);
        if (down_px > 1.0)
            part = std::min(part, (stage.lowest_tip_px - load.from.y()) / down_px);
    }
    return wanted_px_per_N * std::max(part, kShortest);
}

BodyStage fitted(const Bounds& bounds, const std::vector<BodyResult>& shown, const Camera& camera,
                 const Point& size_px, const BodyMargins& margins) {
    const Point span = bounds.span().cwiseMax(Point(0.2, 0.2));
    const Point room{std::max(size_px.x() - margins.left_px - margins.right_px, 80.0),
                     std::max(size_px.y() - margins.top_px - margins.bottom_px, 80.0)};
    BodyStage stage;
    stage.camera = camera;
    stage.size_px = size_px;
    stage.px_per_m = std::min(room.x() / span.x(), room.y() / span.y());
    const Point centre{margins.left_px + 0.5 * room.x(), margins.top_px + 0.5 * room.y()};
    const Point middle = bounds.middle();
    stage.origin_px = centre - stage.px_per_m * Point(middle.x(), -middle.y());
    stage.lowest_tip_px = size_px.y() - margins.bottom_px;
    stage.px_per_N = arrow_scale(shown, stage, room.y());
    return stage;
}

} // namespace

Camera side_camera() {
    return {Vec3::UnitX(), Vec3::UnitY()};
}

Camera front_camera() {
    return {-Vec3::UnitZ(), Vec3::UnitY()};
}

Camera above_camera() {
    return {Vec3::UnitX(), -Vec3::UnitZ()};
}

Camera oblique_camera() {
    constexpr double kToFront_rad = 0.80;
    constexpr double kRaised_rad = 0.28;
    return turned(side_camera(), kToFront_rad, -kRaised_rad);
}

Camera camera_of(setup::BodyView view) {
    switch (view) {
    case setup::BodyView::side:
        return side_camera();
    case setup::BodyView::front:
        return front_camera();
    case setup::BodyView::above:
        return above_camera();
    case setup::BodyView::oblique:
        return oblique_camera();
    }
    return side_camera();
}

Camera turned(const Camera& camera, double about_vertical_rad, double over_rad) {
    const Eigen::AngleAxisd about(about_vertical_rad, Vec3::UnitY());
    const Vec3 right = about * camera.right;
    const Vec3 up = about * camera.up;
    const Eigen::AngleAxisd over(over_rad, right);
    return {right, over * up};
}

std::vector<BodyResult> solved_along(const mechanics::Exercise& exercise,
                                     const std::vector<double>& places) {
    std::vector<BodyResult> results;
    for (const double progress : places) {
        mechanics::BodyCase posed = exercise.body_case;
        if (exercise.path)
            posed.pose = mechanics::pose_at(posed.pose, *exercise.path, progress);
        if (auto solved = mechanics::solve_body(posed))
            results.push_back(std::move(*solved));
        if (!exercise.path)
            break;
    }
    return results;
}

BodyStage fit_body(const mechanics::BodyCase& body_case, const std::vector<BodyResult>& shown,
                   const Camera& camera, const Point& size_px, const BodyMargins& margins) {
    assert(!shown.empty());
    return fitted(bounds_of(body_case, shown, camera), shown, camera, size_px, margins);
}

BodyStage fit_part(const mechanics::BodyCase& body_case, const std::vector<BodyResult>& shown,
                   const std::vector<mechanics::Hinge>& hinges, const std::vector<Vec3>& also_m,
                   const Camera& camera, const Point& size_px, const BodyMargins& margins) {
    assert(!shown.empty());
    Bounds bounds;
    for (const BodyResult& result : shown)
        for (const mechanics::Hinge hinge : hinges)
            add_part(body_case, result, hinge, camera, bounds);
    for (const Vec3& place_m : also_m)
        bounds.add(on_sheet_m(camera, place_m), 0.0);
    return fitted(bounds, shown, camera, size_px, margins);
}

void share_scale(BodyStage& one, BodyStage& other, const BodyMargins& margins) {
    const Point centre{0.5 * (one.size_px.x() + margins.left_px - margins.right_px),
                       0.5 * (one.size_px.y() + margins.top_px - margins.bottom_px)};
    const double px_per_m = std::min(one.px_per_m, other.px_per_m);
    const double px_per_N = std::min(one.px_per_N, other.px_per_N);
    for (BodyStage* stage : {&one, &other}) {
        stage->origin_px = centre + px_per_m / stage->px_per_m * (stage->origin_px - centre);
        stage->px_per_m = px_per_m;
        stage->px_per_N = px_per_N;
    }
    // Seen from above there is no floor to be level.
    if (std::abs(one.camera.up.y()) < 0.5)
        return;
    const double floor_px = std::max(one.origin_px.y(), other.origin_px.y());
    one.origin_px.y() = other.origin_px.y() = floor_px;
}

} // namespace steelyard::scene
