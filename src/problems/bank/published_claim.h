#pragma once
// Keeps question families honest: a number that comes from memory is not called published.

#include "problems/bank/family.h"
#include "setup/toml/toml_reader.h"

namespace steelyard::problems {

/// Adds an error for every text of a family's file that speaks of something published while a
/// muscle's arm that the family draws on is from memory.
/// @param document  the family's file
void check_published_claims(const setup::TomlDocument& document, const Family& family,
                            setup::InputErrors& errors);

} // namespace steelyard::problems
