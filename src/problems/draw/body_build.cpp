#include "problems/draw/body_build.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::problems {

namespace {

using mechanics::Body;
using mechanics::BodyCase;
using mechanics::Segment;
using mechanics::SegmentBody;
using mechanics::Vec3;

double value(const std::optional<Expression>& expression, const double* quantities) {
    return expression ? expression->evaluate(quantities) : 0.0;
}

/// Changes a vector's component along a direction by a factor.
void stretch_along(Vec3& vector, const Vec3& along, double factor) {
    vector += (factor - 1.0) * vector.dot(along) * along;
}

/// Gives a segment another length, with everything that is fixed to it.
void stretch(Body& body, Segment segment, double factor) {
    SegmentBody& part = body[segment];
    const Vec3 along = part.tip_m.normalized();
    stretch_along(part.tip_m, along, factor);
    stretch_along(part.com_m, along, factor);
    part.length_m *= factor;
    for (const mechanics::JointInfo& joint : mechanics::all_joints())
        if (mechanics::segment_info(joint.segment).parent == segment)
            stretch_along(body[joint.segment].joint_m, along, factor);
}

Segment toes_of(Segment foot) {
    return foot == Segment::right_foot ? Segment::right_toes : Segment::left_toes;
}

/// The foot's length is that from below the ankle forward to its ball.
void set_foot_length(Body& body, Segment foot, double length_m) {
    body[foot].length_m = length_m;
    body[foot].tip_m.x() = length_m;
    body[toes_of(foot)].joint_m = body[foot].tip_m;
    body.ball_before_ankle_m = length_m;
}

/// @param to_the_right_m  where the shoulder lies beside the middle; negative on the left
void set_shoulder_breadth(Body& body, Segment girdle, double to_the_right_m) {
    SegmentBody& part = body[girdle];
    const double before_m = part.joint_m.z() + part.tip_m.z();
    part.joint_m.z() *= to_the_right_m / before_m;
    part.tip_m.z() *= to_the_right_m / before_m;
    part.length_m = part.tip_m.norm();
    body[girdle == Segment::right_girdle ? Segment::right_upper_arm : Segment::left_upper_arm]
        .joint_m = part.tip_m;
}

void apply_to(Body& body, const BodyPartPlan& plan, Segment segment, const double* quantities) {
    SegmentBody& part = body[segment];
    if (plan.mass)
        part.mass_kg = plan.mass->evaluate(quantities);
    if (plan.mass && plan.part == BodyPart::foot)
        body[toes_of(segment)].mass_kg = 0.0; // counted with the foot
    if (plan.length && plan.part == BodyPart::foot)
        set_foot_length(body, segment, plan.length->evaluate(quantities));
    else if (plan.length)
        stretch(body, segment, plan.length->evaluate(quantities) / part.length_m);
    if (plan.shoulders)
        stretch(body, segment,
                plan.shoulders->evaluate(quantities) / body[Segment::right_girdle].joint_m.y());
    if (plan.centre)
        part.com_m = plan.centre->evaluate(quantities) * part.tip_m.normalized();
}

void apply(Body& body, const BodyPartPlan& plan, const double* quantities) {
    const Segment right = segment_of(plan.part);
    const Segment left = mechanics::segment_info(right).mirror;
    apply_to(body, plan, right, quantities);
    if (left != right)
        apply_to(body, plan, left, quantities);
    if (plan.grip)
        body.grip_from_wrist_m = plan.grip->evaluate(quantities);
    if (plan.half_breadth) {
        set_shoulder_breadth(body, Segment::right_girdle, plan.half_breadth->evaluate(quantities));
        set_shoulder_breadth(body, Segment::left_girdle, -plan.half_breadth->evaluate(quantities));
    }
}

Vec3 place_of(const SpacePlan& plan, const double* quantities,
              const mechanics::Placement& placement) {
    const Vec3 away(value(plan.forward, quantities), value(plan.up, quantities),
                    value(plan.right, quantities));
    return plan.from_joint ? Vec3(placement[*plan.from_joint].joint_m + away) : away;
}

mechanics::BodyPoint point_of(const BodyPointPlan& plan, const double* quantities,
                              const Body& body) {
    mechanics::BodyPoint point = plan.point;
    if (plan.distance)
        point.along = plan.distance->evaluate(quantities) / body[point.segment].length_m;
    return point;
}

void build_resistance(const ResistancePlan& plan, const double* quantities, const Body& body,
                      const mechanics::Placement& placement, mechanics::Resistance& resistance) {
    using Is = ResistancePlan::Is;
    const double size = plan.size.evaluate(quantities);
    const mechanics::BodyPoint at = point_of(plan.at, quantities, body);
    switch (plan.is) {
    case Is::dumbbell:
        resistance.kind = mechanics::Dumbbell{at.segment, size};
        break;
    case Is::barbell:
        resistance.kind = mechanics::Barbell{size, std::nullopt};
        break;
    case Is::cuff:
        resistance.kind = mechanics::Cuff{at, size};
        break;
    case Is::cable:
        resistance.kind = mechanics::Cable{at, place_of(plan.space, quantities, placement), size};
        break;
    case Is::band: {
        mechanics::Band band;
        band.at = at;
        band.anchor = place_of(plan.space, quantities, placement);
        band.slack_length_m = value(plan.slack_length, quantities);
        band.law = mechanics::LinearBand{size};
        resistance.kind = std::move(band);
        break;
    }
    case Is::push:
        resistance.kind =
            mechanics::PartnerPush{at, place_of(plan.space, quantities, placement), size, false};
        break;
    }
}

/// Lets the parts whose mass is not stated share the rest of the body's in their proportions.
void share_rest(const BodyPlan& plan, double body_mass_kg, Body& body) {
    std::array<bool, mechanics::kSegmentCount> stated{};
    for (const BodyPartPlan& part : plan.parts) {
        if (!part.mass)
            continue;
        for (const Segment segment :
             {segment_of(part.part), mechanics::segment_info(segment_of(part.part)).mirror}) {
            stated[mechanics::index_of(segment)] = true;
            if (part.part == BodyPart::foot)
                stated[mechanics::index_of(toes_of(segment))] = true;
        }
    }
    double stated_kg = 0.0;
    double rest_kg = 0.0;
    for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i)
        (stated[i] ? stated_kg : rest_kg) += body.segments[i].mass_kg;
    for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i)
        if (!stated[i])
            body.segments[i].mass_kg *= (body_mass_kg - stated_kg) / rest_kg;
}

mechanics::Pose pose_of(const BodyPlan& plan, const double* quantities) {
    mechanics::Pose pose;
    for (const auto& [hinge, angle] : plan.pose)
        pose[hinge] = angle.evaluate(quantities);
    mechanics::Anchor& anchor = pose.anchor;
    if (plan.lean) {
        constexpr double kHipHeight_m = 0.9;
        anchor.point = {Segment::pelvis, mechanics::Spot::along, 0.0, Vec3::Zero()};
        anchor.at_m = Vec3(0.0, kHipHeight_m, 0.0);
        anchor.lean_rad = plan.lean->evaluate(quantities);
    } else if (const auto* on = std::get_if<mechanics::OnContacts>(&plan.support);
               on && on->contacts.front().patch == mechanics::Patch::ball) {
        anchor.point = {Segment::right_toes, mechanics::Spot::toe_tip, 0.0, Vec3::Zero()};
    }
    return pose;
}

/// Whether a part's numbers can be a body's: finite, sizes above 0.
bool is_possible(const Body& body) {
    return std::all_of(body.segments.begin(), body.segments.end(), [](const SegmentBody& part) {
        return part.com_m.allFinite() && part.joint_m.allFinite() && part.tip_m.allFinite() &&
               std::isfinite(part.length_m) && part.length_m > 0.0 && std::isfinite(part.mass_kg) &&
               part.mass_kg >= 0.0;
    });
}

} // namespace

bool build_body(const BodyPlan& plan, const double* quantities, double gravity_m_s2,
                BodyCase& body_case) {
    Body& body = body_case.body;
    body = plan.person;
    for (const BodyPartPlan& part : plan.parts)
        apply(body, part, quantities);
    if (plan.body_mass)
        share_rest(plan, plan.body_mass->evaluate(quantities), body);
    if (!is_possible(body) || !std::isfinite(body.grip_from_wrist_m))
        return false;
    body.mass_kg = 0.0;
    for (const SegmentBody& segment : body.segments)
        body.mass_kg += segment.mass_kg;

    body_case.pose = pose_of(plan, quantities);
    body_case.support = plan.support;
    body_case.gravity_m_s2 = gravity_m_s2;

    if (!mechanics::check_pose(body, body_case.pose))
        return false;
    const bool needs_places =
        std::any_of(plan.resistances.begin(), plan.resistances.end(),
                    [](const ResistancePlan& each) { return each.space.from_joint.has_value(); });
    const mechanics::Placement placement =
        needs_places ? mechanics::place(body, body_case.pose) : mechanics::Placement{};
    body_case.resistances.resize(plan.resistances.size());
    for (std::size_t i = 0; i < plan.resistances.size(); ++i)
        build_resistance(plan.resistances[i], quantities, body, placement,
                         body_case.resistances[i]);
    return true;
}

} // namespace steelyard::problems
