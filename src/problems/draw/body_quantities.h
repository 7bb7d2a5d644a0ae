#pragma once
// What a solved body says: forces that count as one, their arms, and every quantity of the
// vocabulary.

#include "problems/bank/body_plan.h"

namespace steelyard::problems {

/// A force that counts as one, at one place: a load, the weight of a part.
struct PlacedForce {
    mechanics::Vec3 point_m = mechanics::Vec3::Zero();
    mechanics::Vec3 force_N = mechanics::Vec3::Zero();
    double mass_kg = 0.0; ///< of weights
};

/// The force of a part of the setup, as seen from an axis.
PlacedForce force_of(const SetupPart& part, const AxisPlan& axis, const BodyPlan& plan,
                     const BodySolution& solved);

/// What it does about the axis.
mechanics::HingeArm arm_about_axis(const PlacedForce& force, const AxisPlan& axis,
                                   const BodySolution& solved);

/// A place as it is seen: x right, y up in the plane of the view.
/// From the side x is forward; from the front the person's right is at the left; from above x is
/// forward and the person's left is up.
mechanics::Vec2 in_view(setup::BodyView view, const mechanics::Vec3& place_m);

/// What a solved body says about one quantity [SI]. NaN when it has none.
/// Of the own weight: all parts on the free side of the axis, as one force at their centre of mass;
/// the free side is the one that no seat and no floor holds.
double value_of(const Provided& provided, const BodyPlan& plan, const BodySolution& solved);

} // namespace steelyard::problems
