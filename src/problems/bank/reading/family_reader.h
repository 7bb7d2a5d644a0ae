#pragma once
// Reads one family file. question_bank/README.md describes the format.

#include "problems/bank/family.h"
#include "problems/bank/published.h"
#include "setup/toml/toml_reader.h"

#include <tl/expected.hpp>

namespace steelyard::problems {

/// A family whose setup is drawn and solved: question_bank/families/*.toml.
/// @param published  tables and muscles that it may build on
/// @return the family, or everything wrong with the file
tl::expected<Family, setup::InputErrors> read_family(const setup::TomlDocument& document,
                                                     const Published& published);

/// A written family: question_bank/items/*.toml.
tl::expected<Family, setup::InputErrors> read_items(const setup::TomlDocument& document);

/// What both kinds of file begin with: id, title, skill, strategy, system, difficulty.
void read_heading(setup::TomlReader& table, Family& family);

} // namespace steelyard::problems
