#pragma once
// Reads what a place question wants marked, and the spots to choose from.

#include "problems/bank/family_names.h"

namespace steelyard::problems {

/// Reads [place] of a family.
void read_place(setup::TomlReader& table, Family& family, FamilyNames& names);

} // namespace steelyard::problems
