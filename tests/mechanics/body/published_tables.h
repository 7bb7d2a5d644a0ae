#pragma once
// The two published tables of segment parameters, typed in from their sources, for tests.

#include "mechanics/body/solve_body.h"

namespace steelyard::mechanics {

/// de Leva 1996, J Biomech 29(9):1223–1230, Table 4 (seen in two transcriptions that agree), with
/// the end points that match our joints: head vertex–cervicale, hand wrist–3rd metacarpale, shank
/// knee–ankle joint centres. Heights of the ankle and place of the ball of the foot: Drillis &
/// Contini 1966 and memory.
SegmentTable de_leva();

/// Winter's table after Dempster (Biomechanics and Motor Control of Human Movement, Table 4.1; two
/// transcriptions) with lengths of Drillis & Contini 1966. Radii about the long axes, which it does
/// not give, from de Leva.
SegmentTable winter();

/// 75 kg, 1.75 m by Winter's table: the body whose torques published-values 2c derives.
Body winter_body();
/// 73.0 kg, 1.741 m: de Leva's male reference body.
Body de_leva_male();

/// Standing on both feet, arms hanging.
BodyCase standing(const Body& body);

/// A hinge angle in degrees.
double degrees(double angle_deg);

} // namespace steelyard::mechanics
