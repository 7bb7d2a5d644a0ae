#pragma once
// A family's file in US customary units: the same family, its quantities drawn on a round grid of
// pounds and inches instead of kilograms and metres.
//
// What a person reads is changed: what is drawn, the units in which numbers are shown, and sizes
// that stand in a text, together with what they do ("20 cm farther out" is "8 in farther out", in
// its `sets` too). What only the solver reads (conditions, formulas, the setup) stays in the units
// it is written in, which any expression may use.

#include "setup/toml/toml_reader.h"

namespace steelyard::problems {

/// The US edition of a family's file that is written in SI. Lengths are in inches, where one of
/// them may be longer than 2.5 m or work is asked, in feet; torques go with them. Its `[us]` table,
/// where it has one, replaces what it names.
setup::TomlDocument us_edition(const setup::TomlDocument& si);

/// Whether a family's file is one that has a US edition: its system is SI, or not said; of a
/// written family, one of its items says that it has.
bool has_us_edition(const setup::TomlDocument& document);

} // namespace steelyard::problems
