#pragma once
// Reads the parts of a family file that say how its questions are answered: wrong rules, choices
// and predictions. What is wrong with them is added to the table's errors.

#include "problems/bank/family_names.h"

namespace steelyard::problems {

/// [wrong] and same_number.
void read_wrong(setup::TomlReader& table, Family& family, FamilyNames& names);

/// [[choice]] and keep_order, for single, several and ordering.
void read_choices(setup::TomlReader& table, Family& family, FamilyNames& names);

/// [[change]], for a prediction.
void read_predictions(setup::TomlReader& table, Family& family, FamilyNames& names);

} // namespace steelyard::problems
