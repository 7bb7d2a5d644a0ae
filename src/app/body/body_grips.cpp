#include "app/body/body_grips.h"

#include "mechanics/body/kinematics.h"
#include "mechanics/resistance/resistance_kinds.h"
#include "scene/body/body_forces.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::BodyPoint;
using mechanics::Joint;
using mechanics::Segment;
using mechanics::Spot;
using mechanics::Vec3;
using scene::Point;

constexpr std::size_t kTrailPlaces = 33;
/// A joint this near to one that is already there is taken to be behind it [px].
constexpr double kBehind_px = 12.0;
constexpr std::array kLargeJoints{Joint::right_shoulder, Joint::right_elbow, Joint::right_hip,
                                  Joint::right_knee,     Joint::right_ankle, Joint::left_shoulder,
                                  Joint::left_elbow,     Joint::left_hip,    Joint::left_knee,
                                  Joint::left_ankle};

Vec3 place_on(const BodyModel& model, const BodyPoint& point) {
    const auto local_m = mechanics::local_point(model.posed.body, point);
    const mechanics::SegmentFrame& frame = model.solved.placement[point.segment];
    return local_m ? frame.at(*local_m) : frame.joint_m;
}

void add_loads(const BodyModel& model, const scene::BodyStage& stage,
               std::vector<BodyGrip>& grips) {
    const mechanics::Exercise& exercise = model.exercise();
    for (const scene::SeenForce& seen : scene::seen_forces(model.solved, stage)) {
        const BodyPart part{BodyPartKind::load, seen.force.index};
        if (seen.ground || !value_of(model.standing(), {part, BodyField::size}))
            continue;
        grips.push_back({part, BodyHold::tip, name_of(exercise, part), seen.force.point_m,
                         seen.to(), std::nullopt});
    }
    for (std::size_t i = 0; i < exercise.body_case.resistances.size(); ++i) {
        const BodyPart part{BodyPartKind::load, i};
        const BodyPoint point = carrier_of(exercise.body_case.resistances[i]);
        const Vec3 at_m = place_on(model, point);
        grips.push_back(
            {part, BodyHold::place, name_of(exercise, part), at_m, stage.to_sheet(at_m), point});
    }
    for (std::size_t i = 0; i < exercise.body_case.resistances.size(); ++i)
        if (const auto at_m = fixture_place(exercise, i)) {
            const BodyPart part{BodyPartKind::fixture, i};
            grips.push_back({part, BodyHold::place, name_of(exercise, part), *at_m,
                             stage.to_sheet(*at_m), std::nullopt});
        }
}

void add_joint(const BodyModel& model, const scene::BodyStage& stage, Joint joint,
               std::vector<BodyGrip>& grips) {
    const Segment segment = mechanics::joint_info(joint).segment;
    const Vec3 at_m = model.solved.placement[segment].joint_m;
    const Point at_px = stage.to_sheet(at_m);
    for (const BodyGrip& grip : grips)
        if (grip.part.kind == BodyPartKind::joint && (grip.at_px - at_px).norm() < kBehind_px)
            return;
    const BodyPart part{BodyPartKind::joint, mechanics::index_of(joint)};
    grips.push_back({part, BodyHold::place, name_of(model.exercise(), part), at_m, at_px,
                     BodyPoint{segment, Spot::along, 0.0, Vec3::Zero()}});
}

} // namespace

std::vector<BodyGrip> body_grips(const BodyModel& model, const scene::BodyStage& stage) {
    std::vector<BodyGrip> grips;
    add_loads(model, stage, grips);
    for (const mechanics::Hinge axis : model.state.setup.axes)
        add_joint(model, stage, mechanics::hinge_info(axis).joint, grips);
    std::array<Joint, kLargeJoints.size()> nearest_first = kLargeJoints;
    std::stable_sort(nearest_first.begin(), nearest_first.end(), [&](Joint a, Joint b) {
        const auto depth = [&](Joint joint) {
            return stage.depth(
                model.solved.placement[mechanics::joint_info(joint).segment].joint_m);
        };
        return depth(a) > depth(b) + 1e-6;
    });
    for (const Joint joint : nearest_first)
        add_joint(model, stage, joint, grips);
    return grips;
}

std::vector<BodyPart> parts_of(const std::vector<BodyGrip>& grips) {
    std::vector<BodyPart> parts;
    for (const BodyGrip& grip : grips)
        if (grip.hold == BodyHold::place)
            parts.push_back(grip.part);
    return parts;
}

std::vector<Vec3> trail_of(const mechanics::Exercise& exercise, const BodyPoint& point) {
    std::vector<Vec3> trail_m;
    const auto local_m = mechanics::local_point(exercise.body_case.body, point);
    if (!exercise.path || !local_m)
        return trail_m;
    trail_m.reserve(kTrailPlaces);
    mechanics::Placement placement;
    for (std::size_t i = 0; i < kTrailPlaces; ++i) {
        const double progress = static_cast<double>(i) / static_cast<double>(kTrailPlaces - 1);
        mechanics::place(exercise.body_case.body,
                         mechanics::pose_at(exercise.body_case.pose, *exercise.path, progress),
                         placement);
        trail_m.push_back(placement[point.segment].at(*local_m));
    }
    return trail_m;
}

OnTrail nearest_on_trail(const std::vector<Vec3>& trail_m, const scene::BodyStage& stage,
                         const Point& sheet_px) {
    OnTrail nearest{0.0, 1e9};
    for (std::size_t i = 1; i < trail_m.size(); ++i) {
        const Point from = stage.to_sheet(trail_m[i - 1]);
        const Point step = stage.to_sheet(trail_m[i]) - from;
        const double part =
            std::clamp((sheet_px - from).dot(step) / std::max(step.squaredNorm(), 1e-9), 0.0, 1.0);
        const double distance_px = (from + part * step - sheet_px).norm();
        if (distance_px < nearest.distance_px)
            nearest = {(static_cast<double>(i - 1) + part) /
                           static_cast<double>(trail_m.size() - 1),
                       distance_px};
    }
    return nearest;
}

} // namespace steelyard::app
