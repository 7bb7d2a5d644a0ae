#pragma once
// Wrong rules that compare what cannot be compared, such as a torque given for a force: what number
// they give depends on the units in which the person computed.

#include "problems/bank/family.h"

namespace steelyard::problems {

/// Whether a formula gives a quantity of a dimension, whatever the units: with lengths doubled and
/// masses tripled its value grows as such a quantity does. True where it cannot be told, and for
/// formulas with a size of their own ("1 ft").
bool is_homogeneous(const Expression& formula, const Family& family, setup::Dimension dimension);

/// The value of a formula computed in the units that are shown, taken in the unit that is asked
/// [SI]: 392 in·lbf given for a force are 392 lbf. Angles are turned, percents are shares.
double value_in_shown_units(const Expression& formula, const Family& family,
                            const double* quantities);

} // namespace steelyard::problems
