#include "problems/body_plan.h"

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
                plan.shoulders->evaluate(quantities) / body[Segment::right_upper_arm].joint_m.y());
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
        body[Segment::right_upper_arm].joint_m.z() = plan.half_breadth->evaluate(quantities);
        body[Segment::left_upper_arm].joint_m.z() = -plan.half_breadth->evaluate(quantities);
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

/// Whether the floor or the seat holds the far side of a joint, seen from the pelvis.
bool is_held_beyond(const mechanics::Support& support, Segment joint_segment) {
    if (const auto* held = std::get_if<mechanics::Held>(&support))
        return mechanics::is_at_or_beyond(held->segment, joint_segment);
    const auto& contacts = std::get<mechanics::OnContacts>(support).contacts;
    return std::any_of(contacts.begin(), contacts.end(), [&](const mechanics::Contact& contact) {
        return mechanics::is_at_or_beyond(contact.segment, joint_segment);
    });
}

Segment beyond(mechanics::Hinge hinge) {
    return mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
}

bool is_beyond(Segment segment, const AxisPlan& axis) {
    return std::any_of(axis.hinges.begin(), axis.hinges.end(), [&](mechanics::Hinge hinge) {
        return mechanics::is_at_or_beyond(segment, beyond(hinge));
    });
}

void add_weight(Segment segment, const BodySolution& solved, PlacedForce& total) {
    const double mass_kg = solved.body_case.body[segment].mass_kg;
    total.mass_kg += mass_kg;
    total.point_m += mass_kg * solved.result.placement[segment].com_m;
}

/// Weights gathered by add_weight as one force.
PlacedForce as_weight(PlacedForce total, double gravity_m_s2) {
    if (total.mass_kg > 0.0)
        total.point_m /= total.mass_kg;
    total.force_N = Vec3(0.0, -total.mass_kg * gravity_m_s2, 0.0);
    return total;
}

PlacedForce load_force(std::size_t load, const BodySolution& solved) {
    PlacedForce total;
    double size_N = 0.0;
    for (const mechanics::BodyForce& force : solved.result.forces) {
        if (force.origin != mechanics::ForceOrigin::resistance || force.index != load)
            continue;
        total.force_N += force.force_N;
        total.point_m += force.force_N.norm() * force.point_m;
        size_N += force.force_N.norm();
    }
    if (size_N > 0.0)
        total.point_m /= size_N;
    return total;
}

/// A part on the side of the axis's joint, or on both when the axis goes through both.
PlacedForce part_weight(BodyPart part, const AxisPlan& axis, const BodySolution& solved) {
    PlacedForce total;
    const Segment right = segment_of(part);
    const Segment left = mechanics::segment_info(right).mirror;
    const mechanics::HingeInfo& hinge = mechanics::hinge_info(axis.hinges.front());
    const bool both = axis.hinges.size() > 1 || hinge.mirror == hinge.hinge;
    const bool on_left =
        beyond(axis.hinges.front()) >= Segment::left_upper_arm &&
        mechanics::segment_info(beyond(axis.hinges.front())).name.substr(0, 4) == "left";
    if (both || !on_left || left == right)
        add_weight(right, solved, total);
    if (left != right && (both || on_left))
        add_weight(left, solved, total);
    return as_weight(total, solved.body_case.gravity_m_s2);
}

PlacedForce own_weight(const AxisPlan& axis, const BodySolution& solved) {
    const bool far_side_held =
        is_held_beyond(solved.body_case.support, beyond(axis.hinges.front()));
    PlacedForce total;
    for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i) {
        const auto segment = static_cast<Segment>(i);
        if (is_beyond(segment, axis) != far_side_held)
            add_weight(segment, solved, total);
    }
    return as_weight(total, solved.body_case.gravity_m_s2);
}

double total_torque(const AxisPlan& axis, const BodySolution& solved) {
    double total_Nm = 0.0;
    for (const mechanics::Hinge hinge : axis.hinges)
        total_Nm += solved.result.external(hinge);
    return std::abs(total_Nm);
}

/// Straight from the axis to a place, square to the axis [m].
double distance_from(const AxisPlan& axis, const Vec3& point_m, const BodySolution& solved) {
    const mechanics::Hinge hinge = axis.hinges.front();
    const Vec3 away = point_m - solved.result.placement.axis_point_m(hinge);
    return away.cross(solved.result.placement.axis(hinge)).norm();
}

double value_of_part(SetupQuantity quantity, BodyPart part, const BodyPlan& plan,
                     const BodySolution& solved) {
    const SegmentBody& segment = solved.body_case.body[segment_of(part)];
    switch (quantity) {
    case SetupQuantity::mass:
        return segment.mass_kg;
    case SetupQuantity::length:
        return segment.length_m;
    case SetupQuantity::centre:
        return segment.com_m.norm();
    case SetupQuantity::angle: {
        const Vec3 along = solved.result.placement[segment_of(part)].rotation * segment.tip_m;
        const mechanics::Vec2 seen = in_view(plan.view, along);
        return std::atan2(std::abs(seen.y()), std::abs(seen.x()));
    }
    default:
        return std::nan("");
    }
}

double value_of_effort(SetupQuantity quantity, const BodyPlan& plan, const BodySolution& solved) {
    const double torque_Nm = total_torque(plan.axes.front(), solved);
    switch (quantity) {
    case SetupQuantity::arm:
        return solved.effort_arm_m;
    case SetupQuantity::torque:
        return torque_Nm;
    case SetupQuantity::force:
        // Shorter than any muscle's arm: the pull would be meaningless.
        return solved.effort_arm_m > 1.0e-3 ? torque_Nm / solved.effort_arm_m : std::nan("");
    default:
        return std::nan("");
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

/// Whether a part's numbers can be a body's: finite, sizes above 0.
bool is_possible(const Body& body) {
    return std::all_of(body.segments.begin(), body.segments.end(), [](const SegmentBody& part) {
        return part.com_m.allFinite() && part.joint_m.allFinite() && part.tip_m.allFinite() &&
               std::isfinite(part.length_m) && part.length_m > 0.0 && std::isfinite(part.mass_kg) &&
               part.mass_kg >= 0.0;
    });
}

} // namespace

Segment segment_of(BodyPart part) {
    switch (part) {
    case BodyPart::pelvis:
        return Segment::pelvis;
    case BodyPart::trunk:
        return Segment::trunk;
    case BodyPart::head:
        return Segment::head;
    case BodyPart::upper_arm:
        return Segment::right_upper_arm;
    case BodyPart::forearm:
        return Segment::right_forearm;
    case BodyPart::hand:
        return Segment::right_hand;
    case BodyPart::thigh:
        return Segment::right_thigh;
    case BodyPart::shank:
        return Segment::right_shank;
    case BodyPart::foot:
        break;
    }
    return Segment::right_foot;
}

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

    body_case.pose = {};
    for (const auto& [hinge, angle] : plan.pose)
        body_case.pose[hinge] = angle.evaluate(quantities);
    mechanics::Anchor& anchor = body_case.pose.anchor;
    if (plan.lean) {
        constexpr double kHipHeight_m = 0.9;
        anchor.point = {Segment::pelvis, mechanics::Spot::along, 0.0, Vec3::Zero()};
        anchor.at_m = Vec3(0.0, kHipHeight_m, 0.0);
        anchor.lean_rad = plan.lean->evaluate(quantities);
    } else if (const auto* on = std::get_if<mechanics::OnContacts>(&plan.support);
               on && on->contacts.front().patch == mechanics::Patch::ball) {
        anchor.point = {Segment::right_toes, mechanics::Spot::toe_tip, 0.0, Vec3::Zero()};
    }
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

const AxisPlan& axis_of(const BodyPlan& plan, const std::optional<BodyAxis>& about) {
    for (const AxisPlan& axis : plan.axes)
        if (axis.axis == about)
            return axis;
    return plan.axes.front();
}

PlacedForce force_of(const SetupPart& part, const AxisPlan& axis, const BodyPlan& plan,
                     const BodySolution& solved) {
    switch (part.is) {
    case SetupPart::Is::load:
        return part.load < plan.resistances.size() ? load_force(part.load, solved) : PlacedForce{};
    case SetupPart::Is::own_weight:
        return own_weight(axis, solved);
    case SetupPart::Is::body_part:
        return part_weight(part.body, axis, solved);
    case SetupPart::Is::effort:
    case SetupPart::Is::whole:
        break;
    }
    return {};
}

mechanics::HingeArm arm_about_axis(const PlacedForce& force, const AxisPlan& axis,
                                   const BodySolution& solved) {
    const mechanics::Hinge hinge = axis.hinges.front();
    return mechanics::arm_about(solved.result.placement.axis_point_m(hinge),
                                solved.result.placement.axis(hinge), force.point_m, force.force_N);
}

mechanics::Vec2 in_view(setup::BodyView view, const Vec3& place_m) {
    switch (view) {
    case setup::BodyView::side:
        return {place_m.x(), place_m.y()};
    case setup::BodyView::front:
        return {-place_m.z(), place_m.y()};
    case setup::BodyView::above:
        break;
    }
    return {place_m.x(), -place_m.z()};
}

bool provides(const BodyPlan& plan, const Provided& provided) {
    const bool has_axis =
        !provided.about || std::any_of(plan.axes.begin(), plan.axes.end(), [&](const auto& axis) {
            return axis.axis == *provided.about;
        });
    if (!has_axis)
        return false;
    switch (provided.quantity) {
    case SetupQuantity::force:
    case SetupQuantity::arm:
    case SetupQuantity::distance:
    case SetupQuantity::torque:
    case SetupQuantity::total_torque:
    case SetupQuantity::mass:
    case SetupQuantity::length:
    case SetupQuantity::centre:
    case SetupQuantity::angle:
        break;
    default:
        return false;
    }
    switch (provided.part.is) {
    case SetupPart::Is::load:
        return provided.part.load < plan.resistances.size();
    case SetupPart::Is::effort:
        return plan.effort.has_value() && provided.quantity != SetupQuantity::distance;
    default:
        return true;
    }
}

double value_of(const Provided& provided, const BodyPlan& plan, const BodySolution& solved) {
    const AxisPlan& axis = axis_of(plan, provided.about);
    if (provided.quantity == SetupQuantity::total_torque)
        return total_torque(axis, solved);
    if (provided.part.is == SetupPart::Is::effort)
        return value_of_effort(provided.quantity, plan, solved);
    const PlacedForce force = force_of(provided.part, axis, plan, solved);
    switch (provided.quantity) {
    case SetupQuantity::force:
        return force.force_N.norm();
    case SetupQuantity::arm:
        return arm_about_axis(force, axis, solved).arm_m;
    case SetupQuantity::torque:
        return std::abs(arm_about_axis(force, axis, solved).torque_Nm);
    case SetupQuantity::distance:
        return distance_from(axis, force.point_m, solved);
    default:
        return value_of_part(provided.quantity, provided.part.body, plan, solved);
    }
}

} // namespace steelyard::problems
