#include "problems/bank/body_plan.h"

#include <algorithm>

namespace steelyard::problems {

mechanics::Segment segment_of(BodyPart part) {
    using mechanics::Segment;
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

std::string words_of(const BodyPlan& plan, const AxisPlan& axis) {
    const bool is_first = axis.axis == plan.axes.front().axis;
    return is_first && !plan.axis_name.empty() ? plan.axis_name : "the " + words_of(axis.axis);
}

const AxisPlan& axis_of(const BodyPlan& plan, const std::optional<BodyAxis>& about) {
    for (const AxisPlan& axis : plan.axes)
        if (axis.axis == about)
            return axis;
    return plan.axes.front();
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

} // namespace steelyard::problems
