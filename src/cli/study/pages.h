#pragma once
// The pages of a skill as text: what the window lets one guess and drag is told.

#include "setup/units/units.h"

#include <iosfwd>
#include <string>

namespace steelyard::cli {

/// Writes the pages of a skill, each with what was to be guessed and what comes out; where they
/// cannot be read, why.
void show_pages(const std::string& skill_id, setup::UnitSystem units, std::ostream& out);

} // namespace steelyard::cli
