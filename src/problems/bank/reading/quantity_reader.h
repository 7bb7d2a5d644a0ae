#pragma once
// Reads the quantities of a family: scenes, what is drawn, what is computed, and in which units
// they are shown.

#include "problems/bank/family_names.h"
#include "problems/bank/published.h"

namespace steelyard::problems {

/// [[scene]]
void read_scenes(setup::TomlReader& table, Family& family);

/// [draw]
void read_draws(setup::TomlReader& table, Family& family, FamilyNames& names);

/// [let], in the order of the file; muscles' arms come from those on file.
void read_lets(setup::TomlReader& table, Family& family, FamilyNames& names,
               const Published& published);

/// [then]: what reads the solution.
void read_thens(setup::TomlReader& table, Family& family, FamilyNames& names);

/// [show]
void read_show(setup::TomlReader& table, Family& family, FamilyNames& names);

} // namespace steelyard::problems
