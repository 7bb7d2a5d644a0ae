#pragma once
// Reads what a family asks and the worked steps that lead to it.

#include "problems/bank/family_names.h"

namespace steelyard::problems {

/// [ask]
void read_ask(setup::TomlReader& table, Family& family, FamilyNames& names);

/// [[step]]
void read_steps(setup::TomlReader& table, Family& family, FamilyNames& names);

} // namespace steelyard::problems
