#pragma once
// From the plan of a body setup and a draw's quantities to the case that is solved.

#include "problems/bank/body_plan.h"

namespace steelyard::problems {

/// Writes the case of a plan into `body_case`, whose storage is reused. Resistances are not named.
/// @return false when its numbers make no body: a length or mass that is not above 0, no value
bool build_body(const BodyPlan& plan, const double* quantities, double gravity_m_s2,
                mechanics::BodyCase& body_case);

} // namespace steelyard::problems
