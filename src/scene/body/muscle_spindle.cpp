#include "scene/body/muscle_spindle.h"

#include "mechanics/body/landmarks.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Hinge;

/// Lengths, in fractions of the body's height: of a muscle that comes from the trunk, and how far
/// one along a limb lies off its bone, at the joint and at its far end.
constexpr double kFromTrunk = 0.16;
constexpr double kOffBone = 0.022;
constexpr double kAboveJoint = 0.015;
constexpr double kOffBoneAtEnd = 0.006;
/// Line widths are made for this scale [px/m].
constexpr double kUsualScale_px_m = 280.0;

/// Lays a spindle along the bone before the joint, on the side on which its pull passes.
void lay_along_bone(const Point& joint, const Point& bone, const Point& along, double height_px,
                    Spindle& spindle) {
    const Point up = bone.normalized();
    const Point across{-up.y(), up.x()};
    const Point lever = spindle.insertion - joint;
    const Point foot = lever - lever.dot(along) * along;
    const double side = foot.dot(across) < 0.0 ? -1.0 : 1.0;
    spindle.over = joint + height_px * (kOffBone * side * across + kAboveJoint * up);
    spindle.end = joint + 0.9 * bone + kOffBoneAtEnd * height_px * side * across;
}

std::optional<Spindle> spindle_of(const mechanics::PlacedLine& line, double tension_N,
                                  const mechanics::Body& body,
                                  const mechanics::Placement& placement, Hinge hinge,
                                  const BodyStage& stage) {
    const Point pull = stage.arrow(line.direction);
    if (pull.norm() < 1e-9)
        return std::nullopt;
    const double fine = stage.px_per_m / kUsualScale_px_m;
    const double height_px = body.height_m * stage.px_per_m;
    Spindle spindle;
    spindle.insertion = spindle.over = stage.to_sheet(line.insertion_m);
    spindle.end = spindle.insertion + kFromTrunk * height_px * pull.normalized();
    spindle.tendon_px = 1.5 * fine;
    // Cross-section grows with force, so the radius with its root.
    spindle.belly_px = std::clamp(0.16 * std::sqrt(tension_N), 2.5, 13.0) * fine;
    const auto carried = mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
    const auto before = mechanics::segment_info(carried).parent;
    const bool from_limb =
        mechanics::segment_info(before).mirror != before && !mechanics::is_girdle(before);
    if (from_limb) {
        const Point joint = stage.to_sheet(placement.axis_point_m(hinge));
        const Point bone = stage.to_sheet(placement[before].joint_m) - joint;
        if (bone.norm() < 1.0)
            return std::nullopt;
        lay_along_bone(joint, bone, pull.normalized(), height_px, spindle);
    }
    spindle.belly = spindle.over + 0.45 * (spindle.end - spindle.over);
    return spindle;
}

} // namespace

std::vector<Spindle> spindles_of(const mechanics::HingeMuscles& muscles,
                                 const mechanics::Body& body, const mechanics::Placement& placement,
                                 Hinge hinge, const BodyStage& stage) {
    std::vector<Spindle> spindles;
    if (muscles.solution.outcome != mechanics::MuscleOutcome::balanced)
        return spindles;
    for (std::size_t i = 0; i < muscles.pulls.size(); ++i) {
        const mechanics::Pull& pull = muscles.pulls[i];
        const double tension_N = muscles.solution.muscles[i].tension_N;
        if (!pull.line || tension_N <= 0.0)
            continue;
        if (const auto one = spindle_of(*pull.line, tension_N, body, placement, hinge, stage))
            spindles.push_back(*one);
    }
    return spindles;
}

void add_spindle(const Spindle& spindle, std::vector<Shape>& shapes) {
    const double tendon_px = spindle.tendon_px;
    const auto add = [&](const Point& from, const Point& to, double from_px, double to_px) {
        shapes.emplace_back(Taper{from, to, from_px, to_px, Role::effort, 0.85});
    };
    if (spindle.over != spindle.insertion)
        add(spindle.insertion, spindle.over, tendon_px, 1.6 * tendon_px);
    add(spindle.over, spindle.belly, 1.6 * tendon_px, spindle.belly_px);
    add(spindle.end, spindle.belly, tendon_px, spindle.belly_px);
}

} // namespace steelyard::scene
