#pragma once
// Reads the [setup] of a family that is about a body: a person in a pose, whose numbers are
// expressions.

#include "problems/bank/family_names.h"
#include "problems/bank/published.h"

namespace steelyard::problems {

/// Whether a [setup] is about a body: it has axes, where a lever has one axis.
bool is_body_setup(const setup::TomlReader& table);

/// @return the plan; what is wrong with it is added to the table's errors. Empty only when there is
///         no axis or no person, which is told too.
std::optional<BodyPlan> read_body_plan(setup::TomlReader& table, FamilyNames& names,
                                       const Published& published);

} // namespace steelyard::problems
