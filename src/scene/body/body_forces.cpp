#include "scene/body/body_forces.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::BodyForce;
using mechanics::ForceOrigin;
using mechanics::Hinge;
using mechanics::Segment;

/// Longest arrows, as a part of the stage's height: the load is what the exercise is about.
constexpr double kLongestLoad = 0.3;
constexpr double kLongestGround = 0.16;
constexpr double kSamePlace_px = 6.0;
constexpr double kShortest_px = 6.0;
constexpr double kNoPush_N = 1e-6; ///< a foot that only touches

bool is_in_leg(Segment segment) {
    return mechanics::is_at_or_beyond(segment, Segment::right_thigh) ||
           mechanics::is_at_or_beyond(segment, Segment::left_thigh);
}

bool is_push_of_ground(const BodyForce& force) {
    return force.origin == ForceOrigin::contact && force.force_N.norm() > kNoPush_N;
}

} // namespace

bool is_pull(const BodyForce& force) {
    return force.origin == ForceOrigin::resistance && force.force_N.norm() > 1e-9;
}

std::vector<SeenForce> merged_forces(const mechanics::BodyResult& result, const BodyStage& stage) {
    std::vector<SeenForce> seen;
    for (const BodyForce& force : result.forces) {
        const bool ground = force.origin == ForceOrigin::contact;
        if (!is_pull(force) && !ground)
            continue;
        const Point from = stage.to_sheet(force.point_m);
        const auto same = std::find_if(seen.begin(), seen.end(), [&](const SeenForce& other) {
            const bool one_thing =
                other.ground == ground && (ground || other.force.index == force.index);
            return one_thing && (other.from - from).norm() < kSamePlace_px;
        });
        if (same == seen.end())
            seen.push_back({force, ground, from, {}});
        else
            same->force.force_N += force.force_N;
    }
    return seen;
}

std::vector<SeenForce> seen_forces(const mechanics::BodyResult& result, const BodyStage& stage) {
    std::vector<SeenForce> seen = merged_forces(result, stage);
    for (SeenForce& one : seen)
        one.span = ended_above(
            stage.lowest_tip_px, one.from,
            arrow_span(stage.arrow(one.force.force_N),
                       (one.ground ? kLongestGround : kLongestLoad) * stage.size_px.y()));
    seen.erase(std::remove_if(
                   seen.begin(), seen.end(),
                   [](const SeenForce& one) { return one.span.along_px.norm() < kShortest_px; }),
               seen.end());
    return seen;
}

bool loads_hinge(const mechanics::BodyCase& body_case, const BodyForce& force, Hinge hinge) {
    const Segment below = mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
    return mechanics::acts_distally(force, hinge) ||
           (force.origin == ForceOrigin::resistance && is_in_leg(below) &&
            std::holds_alternative<mechanics::OnContacts>(body_case.support));
}

std::optional<std::size_t> main_force(const mechanics::BodyCase& body_case,
                                      const mechanics::BodyResult& result, Hinge hinge) {
    const Segment below = mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
    const bool by_ground =
        is_in_leg(below) &&
        std::any_of(result.forces.begin(), result.forces.end(), [&](const BodyForce& force) {
            return is_push_of_ground(force) && mechanics::acts_distally(force, hinge);
        });
    std::optional<std::size_t> main;
    double most_Nm = 0.0;
    for (std::size_t i = 0; i < result.forces.size(); ++i) {
        const BodyForce& force = result.forces[i];
        const bool counts = by_ground ? is_push_of_ground(force) : is_pull(force);
        if (!counts || !loads_hinge(body_case, force, hinge))
            continue;
        const double torque_Nm = std::abs(mechanics::arm_of(result, i, hinge).torque_Nm);
        if (!main || torque_Nm > most_Nm) {
            main = i;
            most_Nm = torque_Nm;
        }
    }
    return main;
}

} // namespace steelyard::scene
