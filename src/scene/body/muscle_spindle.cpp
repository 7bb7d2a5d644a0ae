#include "scene/body/muscle_spindle.h"

#include "mechanics/body/landmarks.h"
#include "mechanics/constants.h"
#include "scene/figure/ring_union.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Hinge;

/// Lengths, in fractions of the body's height: of a muscle that comes from the trunk, and how far
/// one along a limb lies off its bone, at the joint and at its far end.
constexpr double kFromTrunk = 0.13;
constexpr double kOffBone = 0.017;
constexpr double kAboveJoint = 0.02;
constexpr double kOffBoneAtEnd = 0.008;
/// Line widths are made for this scale [px/m].
constexpr double kUsualScale_px_m = 280.0;

/// Lays a spindle along the bone before the joint, on the side on which its pull up the bone turns
/// the limb as its arm says.
/// @param turn  arm about the axis as the eye sees it: positive counter-clockwise
void lay_along_bone(const Point& joint, const Point& bone, double turn, double height_px,
                    Spindle& spindle) {
    const Point up = bone.normalized();
    const Point across{-up.y(), up.x()};
    const double side = turn < 0.0 ? -1.0 : 1.0;
    spindle.over = joint + height_px * (kOffBone * side * across + kAboveJoint * up);
    spindle.end = joint + 0.9 * bone + kOffBoneAtEnd * height_px * side * across;
}

std::optional<Spindle> spindle_of(const mechanics::Pull& muscle, double tension_N,
                                  const mechanics::Body& body,
                                  const mechanics::Placement& placement, Hinge hinge,
                                  const BodyStage& stage) {
    const mechanics::PlacedLine& line = *muscle.line;
    const Point pull = stage.arrow(line.direction);
    if (pull.norm() < 1e-9)
        return std::nullopt;
    const double fine = stage.px_per_m / kUsualScale_px_m;
    const double height_px = body.height_m * stage.px_per_m;
    Spindle spindle;
    spindle.insertion = spindle.over = stage.to_sheet(line.insertion_m);
    // To the origin where the way there is straight and known; the skin ends not far behind it.
    const double reach_m = line.length_m > 0.0 && !line.wrapped
                               ? std::min(line.length_m, 1.5 * kFromTrunk * body.height_m)
                               : kFromTrunk * body.height_m;
    spindle.end = spindle.insertion + reach_m * stage.px_per_m *
                                          Point(stage.camera.right.dot(line.direction),
                                                -stage.camera.up.dot(line.direction));
    spindle.tendon_px = 1.5 * fine;
    // Cross-section grows with force, so the radius with its root; within the skin of the limb.
    spindle.belly_px = std::clamp(0.125 * std::sqrt(tension_N), 2.5, 8.0) * fine;
    const auto carried = mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
    const auto before = mechanics::segment_info(carried).parent;
    const bool from_limb =
        mechanics::segment_info(before).mirror != before && !mechanics::is_girdle(before);
    if (from_limb) {
        const Point joint = stage.to_sheet(placement.axis_point_m(hinge));
        const Point bone = stage.to_sheet(placement[before].joint_m) - joint;
        if (bone.norm() < 1.0)
            return std::nullopt;
        const double toward = placement.axis(hinge).dot(stage.camera.toward_eye());
        lay_along_bone(joint, bone, muscle.arm_m * toward, height_px, spindle);
    }
    spindle.belly = spindle.over + 0.45 * (spindle.end - spindle.over);
    return spindle;
}

} // namespace

std::vector<Spindle> spindles_of(const mechanics::HingeMuscles& muscles,
                                 const mechanics::Body& body, const mechanics::Placement& placement,
                                 Hinge hinge, const BodyStage& stage, const SpindleStyle& style) {
    std::vector<Spindle> spindles;
    if (muscles.solution.outcome != mechanics::MuscleOutcome::balanced)
        return spindles;
    for (std::size_t i = 0; i < muscles.pulls.size(); ++i) {
        const mechanics::Pull& pull = muscles.pulls[i];
        const double tension_N = muscles.solution.muscles[i].tension_N;
        const bool rests = tension_N <= 0.0;
        if (!pull.line || (rests && !style.also_resting))
            continue;
        auto one = spindle_of(pull, tension_N, body, placement, hinge, stage);
        if (!one)
            continue;
        one->rests = rests;
        one->belly_px *= style.thicker;
        spindles.push_back(*one);
    }
    std::stable_partition(spindles.begin(), spindles.end(),
                          [](const Spindle& spindle) { return spindle.rests; });
    return spindles;
}

namespace {

/// The figure as far as it is near to one muscle.
class Skin {
public:
    Skin(const std::vector<Outline>& flesh, const Spindle& spindle) {
        const Point reach(spindle.belly_px + 4.0, spindle.belly_px + 4.0);
        Point low = spindle.insertion.cwiseMin(spindle.over).cwiseMin(spindle.end) - reach;
        Point high = spindle.insertion.cwiseMax(spindle.over).cwiseMax(spindle.end) + reach;
        for (const Outline& outline : flesh)
            for (const Ring& ring : outline.rings) {
                Point ring_low = ring.front();
                Point ring_high = ring.front();
                for (const Point& corner : ring) {
                    ring_low = ring_low.cwiseMin(corner);
                    ring_high = ring_high.cwiseMax(corner);
                }
                if ((ring_low.array() <= high.array()).all() &&
                    (ring_high.array() >= low.array()).all())
                    rings_.push_back(&ring);
            }
    }

    bool covers(const Point& point) const {
        return std::any_of(rings_.begin(), rings_.end(),
                           [&](const Ring* ring) { return is_inside(point, *ring); });
    }

    /// How far one can go from a point in it and stay well inside, up to a length [px].
    double room_px(const Point& from, const Point& way, double most_px) const {
        constexpr double kWithin_px = 1.5;
        double room = most_px;
        while (room > 0.0 && !covers(from + (room + kWithin_px) * way))
            room -= 1.0;
        return std::max(room, 0.0);
    }

private:
    std::vector<const Ring*> rings_;
};

/// The longest piece within the skin of a strand whose radius follows a profile from one end (0) to
/// the other (1), no wider than the skin leaves it; empty when none of it is.
template <typename Profile>
Ring strand(const Point& from, const Point& to, const Skin& skin, Profile radius_px) {
    constexpr int kSteps = 24;
    const Point along = to - from;
    const Point across = Point(-along.y(), along.x()) / std::max(along.norm(), 1e-9);
    std::vector<Point> left;
    std::vector<Point> right;
    Ring longest;
    for (int i = 0; i <= kSteps + 1; ++i) {
        const double share = static_cast<double>(i) / kSteps;
        const Point at = from + share * along;
        if (i <= kSteps && skin.covers(at)) {
            const double radius = radius_px(share);
            right.emplace_back(at - skin.room_px(at, -across, radius) * across);
            left.emplace_back(at + skin.room_px(at, across, radius) * across);
            continue;
        }
        if (left.size() > 1 && 2 * left.size() > longest.size()) {
            longest.assign(right.begin(), right.end());
            longest.insert(longest.end(), left.rbegin(), left.rend());
        }
        left.clear();
        right.clear();
    }
    return longest;
}

} // namespace

void add_spindle(const Spindle& spindle, const std::vector<Outline>& flesh, Role role,
                 std::vector<Shape>& shapes) {
    const Skin skin(flesh, spindle);
    const double tendon_px = spindle.tendon_px;
    std::vector<Ring> rings;
    if ((spindle.over - spindle.insertion).norm() > 1.0)
        rings.push_back(strand(spindle.insertion, spindle.over, skin,
                               [&](double share) { return tendon_px * (1.0 + 0.4 * share); }));
    // Thickest a little before the middle, running out into tendons at both ends.
    rings.push_back(strand(spindle.over, spindle.end, skin, [&](double share) {
        const double belly = std::pow(std::sin(mechanics::kPi * std::pow(share, 0.87)), 1.4);
        return tendon_px + std::max(spindle.belly_px - tendon_px, 0.0) * belly;
    }));
    std::vector<Ring> whole = union_of(std::move(rings));
    if (!whole.empty())
        shapes.emplace_back(Outline{std::move(whole), role});
}

} // namespace steelyard::scene
