#include "problems/draw/body_quantities.h"

#include "mechanics/portable.h"

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

using mechanics::Segment;
using mechanics::SegmentBody;
using mechanics::Vec3;

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
        beyond(axis.hinges.front()) >= Segment::left_girdle &&
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
        return mechanics::portable::atan2(std::abs(seen.y()), std::abs(seen.x()));
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

} // namespace

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
    case setup::BodyView::oblique: // asked of no question: it shows no plane
        break;
    }
    return {place_m.x(), -place_m.z()};
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
