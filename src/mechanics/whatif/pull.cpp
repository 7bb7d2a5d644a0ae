#include "mechanics/whatif/pull.h"

#include "mechanics/body/kinematics.h"
#include "mechanics/body/landmarks.h"
#include "mechanics/body/limbs.h"
#include "mechanics/whatif/reach.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace steelyard::mechanics {
namespace {

bool is_leg(Limb limb) {
    return limb == Limb::right_leg || limb == Limb::left_leg;
}

Segment carried_by(Joint joint) {
    return joint_info(joint).segment;
}

bool moves(const Exercise& exercise, Hinge hinge) {
    return exercise.path && exercise.path->end_angle_rad[index_of(hinge)] !=
                                exercise.body_case.pose.angle_rad[index_of(hinge)];
}

template <typename Do> void for_each_hinge(Joint joint, Do act) {
    const SegmentInfo& info = segment_info(carried_by(joint));
    for (std::size_t i = 0; i < info.hinge_count; ++i)
        act(static_cast<Hinge>(info.first_hinge + i));
}

bool moves(const Exercise& exercise, Joint joint) {
    bool any = false;
    for_each_hinge(joint, [&](Hinge hinge) { any = any || moves(exercise, hinge); });
    return any;
}

/// Joints between the point and what carries the body, the nearest to the point first.
/// The joint in which the point itself lies does not move it and is left out.
std::vector<Joint> joints_between(const Segment from, const Segment anchored, bool at_joint) {
    std::vector<Joint> beyond_point;  // from the point towards the pelvis
    std::vector<Joint> beyond_anchor; // from the pelvis towards the anchor
    for (std::size_t j = kJointCount; j-- > 0;) {
        const auto joint = static_cast<Joint>(j);
        const bool of_point = is_at_or_beyond(from, carried_by(joint));
        const bool of_anchor = is_at_or_beyond(anchored, carried_by(joint));
        if (of_point && !of_anchor && !(at_joint && carried_by(joint) == from))
            beyond_point.push_back(joint);
        if (of_anchor && !of_point)
            beyond_anchor.insert(beyond_anchor.begin(), joint);
    }
    beyond_point.insert(beyond_point.end(), beyond_anchor.begin(), beyond_anchor.end());
    return beyond_point;
}

bool is_small(Joint joint) {
    switch (joint) {
    case Joint::right_wrist:
    case Joint::left_wrist:
    case Joint::right_ball_of_foot:
    case Joint::left_ball_of_foot:
    case Joint::lumbar:
        return true;
    default:
        return false;
    }
}

/// Of all joints on the way those that turn: see hinges_that_follow.
std::vector<Joint> joints_that_follow(const Exercise& exercise, const BodyPoint& point) {
    const bool at_joint = point.spot == Spot::along && point.along == 0.0;
    std::vector<Joint> way =
        joints_between(point.segment, exercise.body_case.pose.anchor.point.segment, at_joint);
    // Who pulls at a shoulder means the trunk, but where the shoulder girdle is what moves.
    way.erase(std::remove_if(way.begin(), way.end(),
                             [&](Joint joint) {
                                 return is_girdle(carried_by(joint)) && !moves(exercise, joint);
                             }),
              way.end());
    std::vector<Joint> large;
    std::copy_if(way.begin(), way.end(), std::back_inserter(large),
                 [&](Joint joint) { return !is_small(joint) || moves(exercise, joint); });
    const std::vector<Joint>& candidates = large.empty() ? way : large;
    std::vector<Joint> follow;
    for (const Joint joint : candidates) {
        const Limb limb = limb_of(carried_by(joint));
        const bool other_limb = !follow.empty() && limb != limb_of(carried_by(follow.front()));
        const Limb of_point = limb_of(point.segment);
        const bool trunk_on_legs = !follow.empty() && is_leg(limb) && !is_leg(of_point) &&
                                   point.segment != Segment::pelvis;
        if (other_limb || trunk_on_legs || follow.size() == 2)
            break;
        follow.push_back(joint);
    }
    return follow;
}

/// The resistance pulls on this segment or one beyond it.
bool loads(const Exercise& exercise, Limb limb) {
    const auto result = solve_body(exercise.body_case);
    if (!result)
        return false;
    return std::any_of(result->forces.begin(), result->forces.end(), [&](const BodyForce& force) {
        return force.origin != ForceOrigin::steadying && limb_of(force.segment) == limb;
    });
}

/// Whether the limb of the other side goes along: held alike in every hinge, and with work of its
/// own to do.
bool goes_with_mirror(const Exercise& exercise, Joint joint) {
    const Segment segment = carried_by(joint);
    const Segment mirror = segment_info(segment).mirror;
    if (mirror == segment)
        return false;
    const Limb limb = limb_of(segment);
    bool other_moves = false;
    for (const HingeInfo& info : all_hinges()) {
        if (limb_of(carried_by(info.joint)) != limb)
            continue;
        if (!held_alike_on_both_sides(exercise, info.hinge))
            return false;
        other_moves = other_moves || moves(exercise, info.mirror);
    }
    return other_moves || is_leg(limb) || loads(exercise, limb_of(mirror));
}

FreeHinge free_hinge(const Exercise& exercise, const Pose& pose, Hinge hinge, bool with_mirror) {
    const Interval shift = allowed_shift(exercise, hinge);
    return {hinge, with_mirror, {pose[hinge] + shift.low, pose[hinge] + shift.high}};
}

Pose pose_of(const Exercise& exercise, double progress) {
    return exercise.path ? pose_at(exercise.body_case.pose, *exercise.path, progress)
                         : exercise.body_case.pose;
}

/// Turns a joint so that what it carries turns by an angle about the line of sight, as far as its
/// range allows.
void turn_back(Exercise& exercise, const Placement& placement, const Vec3& sight, Joint joint,
               double turn_rad) {
    const bool with_mirror = goes_with_mirror(exercise, joint);
    const Segment anchored = exercise.body_case.pose.anchor.point.segment;
    std::optional<Hinge> best;
    for_each_hinge(joint, [&](Hinge hinge) {
        const double along = std::abs(placement.axis(hinge).dot(sight));
        if (along > 0.9 && (!best || along > std::abs(placement.axis(*best).dot(sight))))
            best = hinge;
    });
    if (!best)
        return;
    const double sense = (is_at_or_beyond(anchored, carried_by(joint)) ? -1.0 : 1.0) *
                         placement.axis(*best).dot(sight);
    const Interval shift = allowed_shift(exercise, *best);
    shift_hinge(exercise, *best, with_mirror, std::clamp(turn_rad / sense, shift.low, shift.high));
}

/// The joints that keep the direction of what is carried beyond a pulled point.
std::vector<Joint> joints_that_turn_back(const Exercise& exercise, const BodyPoint& point) {
    const Segment anchored = exercise.body_case.pose.anchor.point.segment;
    const bool standing = is_leg(limb_of(anchored));
    if (!standing)
        return {};
    if (is_leg(limb_of(point.segment)) && is_at_or_beyond(anchored, point.segment)) {
        const auto joint = joint_of(point.segment);
        return joint ? std::vector{*joint} : std::vector<Joint>{};
    }
    std::vector<Joint> shoulders;
    for (const Joint shoulder : {Joint::right_shoulder, Joint::left_shoulder})
        if (limb_of(point.segment) == Limb::trunk || carried_by(shoulder) == point.segment)
            shoulders.push_back(shoulder);
    return shoulders;
}

} // namespace

std::vector<FreeHinge> hinges_that_follow(const Exercise& exercise, const PullOnBody& pull) {
    const Pose pose = pose_of(exercise, pull.progress);
    const Placement placement = place(exercise.body_case.body, pose);
    std::vector<FreeHinge> hinges;
    for (const Joint joint : joints_that_follow(exercise, pull.point)) {
        const bool with_mirror = goes_with_mirror(exercise, joint);
        for_each_hinge(joint, [&](Hinge hinge) {
            if (std::abs(placement.axis(hinge).dot(pull.sight)) > std::sqrt(0.5))
                hinges.push_back(free_hinge(exercise, pose, hinge, with_mirror));
        });
    }
    return hinges;
}

tl::expected<Exercise, MechanicsError> pulled(const Exercise& exercise, const PullOnBody& pull) {
    const std::vector<FreeHinge> hinges = hinges_that_follow(exercise, pull);
    const Pose pose = pose_of(exercise, pull.progress);
    const auto reached =
        reach_point(exercise.body_case.body, pose, {pull.point, pull.to_m, pull.sight}, hinges);
    if (!reached)
        return tl::unexpected(reached.error());
    Exercise changed = exercise;
    const Placement placement = place(exercise.body_case.body, pose);
    const Segment anchored = pose.anchor.point.segment;
    double turned_rad = 0.0; // of what lies beyond, about the line of sight
    for (const FreeHinge& free : hinges) {
        const double delta_rad = reached->pose[free.hinge] - pose[free.hinge];
        shift_hinge(changed, free.hinge, free.with_mirror, delta_rad);
        const Segment carried = carried_by(hinge_info(free.hinge).joint);
        const double sense = is_at_or_beyond(anchored, carried) ? -1.0 : 1.0;
        turned_rad += sense * delta_rad * placement.axis(free.hinge).dot(pull.sight);
    }
    for (const Joint joint : joints_that_turn_back(exercise, pull.point))
        turn_back(changed, placement, pull.sight, joint, -turned_rad);
    std::vector<Hinge> kept;
    for (const FreeHinge& free : hinges) {
        kept.push_back(free.hinge);
        if (free.with_mirror)
            kept.push_back(hinge_info(free.hinge).mirror);
    }
    return kept_in_place(std::move(changed), exercise, kept);
}

} // namespace steelyard::mechanics
