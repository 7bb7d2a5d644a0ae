#include "scene/body/body_arms.h"

#include "scene/body/body_forces.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::BodyForce;
using mechanics::Hinge;

/// An arm shorter than this on the sheet is none to be seen [px].
constexpr double kShortestArm_px = 5.0;
/// An arm drawn shorter than this part of its length is seen nearly end-on.
constexpr double kEndOnPart = 0.5;
constexpr double kPastFirst_px = 60.0; ///< the line of action beyond its outermost marks
constexpr double kPastLast_px = 30.0;

/// A force seen on the sheet: where and which way.
struct SeenLine {
    Point at;
    Point along; ///< unit
};

std::optional<SeenLine> seen_line(const BodyForce& force, const BodyStage& stage) {
    const Point arrow = stage.arrow(force.force_N);
    if (arrow.norm() < 1.0)
        return std::nullopt;
    return SeenLine{stage.to_sheet(force.point_m), arrow.normalized()};
}

Point joint_px(Hinge hinge, const mechanics::BodyResult& result, const BodyStage& stage) {
    return stage.to_sheet(result.placement.axis_point_m(hinge));
}

/// A place on the line of action where an arm stands, and how far it reaches on which side.
struct Shelf {
    double along_px;
    double reach_px; ///< signed distance from the line
};

bool collide(const Shelf& one, const Shelf& other, double apart_px) {
    const bool same_side = one.reach_px * other.reach_px > 0.0;
    return same_side && std::abs(one.along_px - other.along_px) < apart_px;
}

/// The shift along the line that is nearest to none and meets no other arm; against the force
/// first, where the body is not.
double free_shift(double along_px, double reach_px, const std::vector<Shelf>& taken,
                  double apart_px) {
    for (int step = 0; step < 12; ++step)
        for (const double sign : {-1.0, 1.0}) {
            const double shift_px = sign * step * 0.5 * apart_px;
            const Shelf here{along_px + shift_px, reach_px};
            if (std::none_of(taken.begin(), taken.end(),
                             [&](const Shelf& other) { return collide(here, other, apart_px); }))
                return shift_px;
        }
    return 0.0;
}

} // namespace

std::optional<ActionLine> action_line(const BodyForce& force, const std::vector<Hinge>& axes,
                                      const mechanics::BodyResult& result, const BodyStage& stage) {
    const auto line = seen_line(force, stage);
    if (!line)
        return std::nullopt;
    double first = 0.0;
    double last = stage.arrow(force.force_N).norm();
    last = std::min(last, 0.3 * stage.size_px.y());
    for (const Hinge hinge : axes) {
        const double foot = (joint_px(hinge, result, stage) - line->at).dot(line->along);
        first = std::min(first, foot);
        last = std::max(last, foot);
    }
    return ActionLine{line->at + (first - kPastFirst_px) * line->along,
                      line->at + (last + kPastLast_px) * line->along};
}

std::vector<BodyArm> body_arms(const mechanics::BodyCase& body_case,
                               const mechanics::BodyResult& result, std::size_t force,
                               const std::vector<Hinge>& axes, std::size_t chosen,
                               const BodyStage& stage, double shelf_px) {
    std::vector<BodyArm> arms;
    const auto line = seen_line(result.forces[force], stage);
    if (!line)
        return arms;
    const Point across{-line->along.y(), line->along.x()};
    std::vector<Shelf> taken;
    for (std::size_t i = 0; i < axes.size(); ++i) {
        if (!loads_hinge(body_case, result.forces[force], axes[i]))
            continue;
        const mechanics::HingeArm reading = mechanics::arm_of(result, force, axes[i]);
        const Point joint = joint_px(axes[i], result, stage);
        const double along_px = (joint - line->at).dot(line->along);
        const Point foot = line->at + along_px * line->along;
        const double reach_px = (joint - foot).dot(across);
        const double true_px = reading.arm_m * stage.px_per_m;
        // The axis that is looked at gets its arm told even where nothing of it is to be seen.
        if (true_px < kShortestArm_px || (std::abs(reach_px) < kShortestArm_px && i != chosen))
            continue;
        const double shift_px = free_shift(along_px, reach_px, taken, shelf_px);
        taken.push_back({along_px + shift_px, reach_px});
        arms.push_back({axes[i],
                        {joint, foot, line->along, shift_px * line->along},
                        reading.arm_m,
                        i == chosen,
                        std::abs(reach_px) < kEndOnPart * true_px});
    }
    return arms;
}

} // namespace steelyard::scene
