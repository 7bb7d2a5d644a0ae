#include "mechanics/range/touch.h"

#include "mechanics/body/limbs.h"
#include "mechanics/range/inverse_kinematics.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

namespace {

/// Places of a path that are looked at.
constexpr int kPlacesTried = 25;
/// A turn that is told brings the contact this near [m].
constexpr double kMended_m = 0.01;
/// A smaller turn is not worth telling among several [rad]: half a degree.
constexpr double kTold_rad = 0.01;

std::vector<ReachGoal> goals_of(const Body& body, const Contact& contact) {
    std::vector<ReachGoal> goals;
    for (const Vec3& point_m : touching_points(body, contact)) {
        ReachGoal goal({contact.segment, Spot::along, 0.0, point_m},
                       Vec3(0.0, contact.level_m, 0.0));
        goal.only = Vec3::UnitY();
        goals.push_back(goal);
    }
    return goals;
}

/// The hinges that could bring a contact down: of its own limb, or of the one that carries it.
std::vector<FreeHinge> candidates(const BodyCase& body_case, const Pose& pose,
                                  const Contact& contact) {
    const Limb own = limb_of(contact.segment);
    const Limb fixed = limb_of(pose.anchor.point.segment);
    std::vector<FreeHinge> free;
    for (const Hinge hinge : hinges_of(own == Limb::trunk ? fixed : own)) {
        const HingeInfo& info = hinge_info(hinge);
        const Limb mirror = mirror_of(limb_of(joint_info(info.joint).segment));
        const auto* on = std::get_if<OnContacts>(&body_case.support);
        const bool other_touches =
            on != nullptr &&
            std::any_of(on->contacts.begin(), on->contacts.end(),
                        [&](const Contact& one) { return limb_of(one.segment) == mirror; });
        const bool both = info.mirror != hinge && mirror != fixed && other_touches &&
                          pose[hinge] == pose[info.mirror];
        free.push_back(
            {hinge,
             both,
             {std::min(info.least_rad, pose[hinge]), std::max(info.most_rad, pose[hinge])}});
    }
    return free;
}

MendingTurn turn_between(const Pose& from, const Pose& to, const FreeHinge& free) {
    return {free.hinge, free.with_mirror, from[free.hinge], to[free.hinge]};
}

double size_of(const MendingTurn& turn) {
    return std::abs(turn.to_rad - turn.from_rad);
}

std::vector<MendingTurn> find_mend(const BodyCase& body_case, const Pose& pose,
                                   const Contact& contact) {
    const Body& body = body_case.body;
    const std::vector<ReachGoal> goals = goals_of(body, contact);
    const std::vector<FreeHinge> free = candidates(body_case, pose, contact);
    const auto mended = [&](const std::vector<FreeHinge>& turning) -> std::optional<Pose> {
        const auto reached = reach_points(body, pose, goals, turning);
        if (!reached || std::abs(gap_m(body, place(body, reached->pose), contact)) > kMended_m)
            return std::nullopt;
        return reached->pose;
    };
    std::optional<MendingTurn> least;
    for (const FreeHinge& one : free)
        if (const auto reached = mended({one})) {
            const MendingTurn turn = turn_between(pose, *reached, one);
            if (!least || size_of(turn) < size_of(*least))
                least = turn;
        }
    if (least)
        return {*least};
    std::vector<MendingTurn> turns;
    if (const auto reached = mended(free))
        for (const FreeHinge& one : free) {
            const MendingTurn turn = turn_between(pose, *reached, one);
            if (size_of(turn) > kTold_rad)
                turns.push_back(turn);
        }
    return turns;
}

} // namespace

double gap_m(const Body& body, const Placement& placement, const Contact& contact) {
    double farthest_m = 0.0;
    for (const Vec3& point_m : touching_points(body, contact)) {
        const double above_m = placement[contact.segment].at(point_m).y() - contact.level_m;
        if (std::abs(above_m) > std::abs(farthest_m))
            farthest_m = above_m;
    }
    return farthest_m;
}

std::optional<SunkPart> find_sunk_part(const Body& body, const Placement& placement) {
    std::optional<SunkPart> deepest;
    const auto look_at = [&](Segment segment, bool is_tip, double height_m) {
        if (-height_m > (deepest ? deepest->depth_m : kTouches_m))
            deepest = SunkPart{segment, is_tip, -height_m};
    };
    for (const SegmentInfo& info : all_segments()) {
        const SegmentFrame& frame = placement[info.segment];
        look_at(info.segment, false, frame.joint_m.y());
        look_at(info.segment, true, frame.at(body[info.segment].tip_m).y());
    }
    return deepest;
}

std::optional<TouchFault> find_touch_fault(const BodyCase& body_case,
                                           const std::optional<PosePath>& path) {
    const auto* on = std::get_if<OnContacts>(&body_case.support);
    if (on == nullptr)
        return std::nullopt;
    const int places = path ? kPlacesTried : 1;
    for (int k = 0; k < places; ++k) {
        const double progress = places > 1 ? static_cast<double>(k) / (places - 1) : 0.0;
        const Pose pose = path ? pose_at(body_case.pose, *path, progress) : body_case.pose;
        const Placement placement = place(body_case.body, pose);
        for (std::size_t i = 0; i < on->contacts.size(); ++i) {
            const double off_m = gap_m(body_case.body, placement, on->contacts[i]);
            if (std::abs(off_m) > kTouches_m)
                return TouchFault{i, progress, off_m, find_mend(body_case, pose, on->contacts[i])};
        }
    }
    return std::nullopt;
}

} // namespace steelyard::mechanics
