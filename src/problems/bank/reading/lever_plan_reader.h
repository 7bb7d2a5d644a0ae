#pragma once
// Reads the [setup] of a family: a lever whose numbers are expressions.

#include "problems/bank/family_names.h"

namespace steelyard::problems {

/// @return the plan; what is wrong with it is added to the table's errors
LeverPlan read_lever_plan(setup::TomlReader& table, FamilyNames& names);

/// A direction: "up", "down", "left", "right", or an expression for an angle from +x,
/// counter-clockwise. Empty when the key is missing.
std::optional<Expression> read_direction(setup::TomlReader& table, std::string_view key,
                                         FamilyNames& names);

} // namespace steelyard::problems
