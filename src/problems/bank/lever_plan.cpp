#include "problems/bank/lever_plan.h"

#include "mechanics/lever/lever_geometry.h"
#include "mechanics/portable.h"

#include <cmath>
#include <limits>

namespace steelyard::problems {

namespace {

using mechanics::Vec2;

double or_else(const std::optional<Expression>& expression, const double* quantities,
               double otherwise) {
    return expression ? expression->evaluate(quantities) : otherwise;
}

Vec2 turned(const Vec2& point, double angle_rad) {
    const auto [s, c] = mechanics::portable::sine_cosine(angle_rad);
    return {c * point.x() - s * point.y(), s * point.x() + c * point.y()};
}

void build_load(const LoadPlan& plan, const double* quantities, mechanics::Load& load) {
    const double at_m = or_else(plan.at, quantities, 0.0);
    const double size = plan.size.evaluate(quantities);
    switch (plan.is) {
    case LoadPlan::Is::mass:
        load.action = mechanics::Weight{at_m, size};
        break;
    case LoadPlan::Is::force:
        load.action = mechanics::PointForce{
            at_m, size, or_else(plan.direction, quantities, mechanics::kDown_rad)};
        break;
    case LoadPlan::Is::torque:
        load.action = mechanics::Couple{size};
        break;
    }
}

/// The reading of the force that a part stands for; null when the solution has no such load.
const mechanics::ForceReading* reading_of(const SetupPart& part,
                                          const mechanics::LeverResult& solved) {
    switch (part.is) {
    case SetupPart::Is::load:
        return part.load < solved.loads.size() ? &solved.loads[part.load] : nullptr;
    case SetupPart::Is::own_weight:
        return &solved.own_weight;
    case SetupPart::Is::effort:
        return &solved.effort;
    case SetupPart::Is::whole:
    case SetupPart::Is::body_part:
        break;
    }
    return nullptr;
}

constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

double value_of_whole(SetupQuantity quantity, const mechanics::LeverResult& solved) {
    switch (quantity) {
    case SetupQuantity::total_torque:
        return std::abs(solved.torque_load_Nm);
    case SetupQuantity::axis_force:
        return solved.axis_reaction_N.norm();
    case SetupQuantity::axis_force_x:
        return solved.axis_reaction_N.x();
    case SetupQuantity::axis_force_y:
        return solved.axis_reaction_N.y();
    case SetupQuantity::ideal_advantage:
        return solved.ideal_advantage.value_or(kNothing);
    case SetupQuantity::actual_advantage:
        return solved.actual_advantage.value_or(kNothing);
    case SetupQuantity::lever_class:
        return solved.lever_class ? static_cast<double>(*solved.lever_class) : kNothing;
    case SetupQuantity::efficiency:
        return solved.efficiency.value_or(kNothing);
    default:
        return kNothing;
    }
}

mechanics::Sought sought_by(const LeverPlan& plan, const double* quantities) {
    if (plan.two_supports)
        return mechanics::SoughtReactions{};
    if (plan.effort_force)
        return mechanics::SoughtLoad{plan.sought_load, plan.effort_force->evaluate(quantities)};
    return mechanics::SoughtEffort{};
}

} // namespace

void build_lever(const LeverPlan& plan, const double* quantities, double gravity_m_s2,
                 mechanics::Lever& lever) {
    const double tilt_rad = or_else(plan.tilt, quantities, 0.0);
    lever.path_m.resize(plan.path.size());
    for (std::size_t i = 0; i < plan.path.size(); ++i)
        lever.path_m[i] = turned(
            {plan.path[i].first.evaluate(quantities), plan.path[i].second.evaluate(quantities)},
            tilt_rad);
    lever.axis_at_m = plan.axis_at.evaluate(quantities);
    lever.effort.at_m = plan.effort_at.evaluate(quantities);
    lever.effort.direction_rad =
        or_else(plan.effort_direction, quantities,
                plan.two_supports ? mechanics::kUp_rad : mechanics::kDown_rad);
    lever.sought = sought_by(plan, quantities);
    lever.loads.resize(plan.loads.size());
    for (std::size_t i = 0; i < plan.loads.size(); ++i)
        build_load(plan.loads[i], quantities, lever.loads[i]);
    lever.own_weight.mass_kg = or_else(plan.own_mass, quantities, 0.0);
    lever.own_weight.centre_at_m.reset();
    if (plan.own_centre)
        lever.own_weight.centre_at_m = plan.own_centre->evaluate(quantities);
    lever.friction.coefficient = or_else(plan.friction_coefficient, quantities, 0.0);
    lever.friction.radius_m = or_else(plan.friction_radius, quantities, 0.0);
    // Seen from above the axis stands upright: weights have no torque about it.
    lever.gravity_m_s2 = plan.from_above ? 0.0 : gravity_m_s2;
}

std::optional<setup::Limb> limb_of(const LeverPlan& plan, std::size_t scene,
                                   const double* quantities, const mechanics::Lever& lever) {
    if (!plan.limb || !plan.limb->shapes.at(scene))
        return std::nullopt;
    const double length_m = mechanics::path_length(lever.path_m);
    return setup::Limb(*plan.limb->shapes[scene],
                       or_else(plan.limb->from, quantities, 0.0) / length_m,
                       or_else(plan.limb->to, quantities, length_m) / length_m);
}

bool provides(const LeverPlan& plan, const Provided& provided) {
    if (provided.about)
        return false;
    switch (provided.part.is) {
    case SetupPart::Is::body_part:
        return false;
    case SetupPart::Is::load:
        return provided.part.load < plan.loads.size();
    case SetupPart::Is::effort:
        return plan.has_effort;
    default:
        return true;
    }
}

double value_of(const Provided& provided, const mechanics::LeverResult& solved) {
    if (provided.part.is == SetupPart::Is::whole)
        return value_of_whole(provided.quantity, solved);
    const mechanics::ForceReading* const reading = reading_of(provided.part, solved);
    if (!reading)
        return kNothing;
    switch (provided.quantity) {
    case SetupQuantity::force:
        if (provided.part.is == SetupPart::Is::effort && !solved.effort_N)
            return kNothing;
        return reading->force_N.norm();
    case SetupQuantity::arm:
        return reading->arm_m;
    case SetupQuantity::distance:
        return (reading->point_m - solved.axis_m).norm();
    case SetupQuantity::torque:
        return std::abs(reading->torque_Nm);
    case SetupQuantity::to_effort:
        return (reading->point_m - solved.effort.point_m).norm();
    default:
        return kNothing;
    }
}

std::optional<DrawnQuantity> drawn_length(const Term& term, const mechanics::LeverResult& solved) {
    if (!term.provided)
        return std::nullopt;
    const mechanics::ForceReading* const reading = reading_of(term.provided->part, solved);
    if (!reading)
        return std::nullopt;
    switch (term.provided->quantity) {
    case SetupQuantity::arm:
        return DrawnQuantity{term.name, solved.axis_m, reading->foot_m, ""};
    case SetupQuantity::distance:
        return DrawnQuantity{term.name, solved.axis_m, reading->point_m, ""};
    case SetupQuantity::to_effort:
        return DrawnQuantity{term.name, solved.effort.point_m, reading->point_m, ""};
    default:
        return std::nullopt;
    }
}

} // namespace steelyard::problems
