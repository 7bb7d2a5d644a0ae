#pragma once
// Reads an answer that picks from lettered choices: "b", "2", "second class", "a c", "b a d c".

#include <tl/expected.hpp>

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {

/// Letters or numbers of choices, in the order typed.
/// @param count  how many choices there are
/// @return indices, or a sentence on what was not understood
tl::expected<std::vector<std::size_t>, std::string> read_letters(std::string_view typed,
                                                                 std::size_t count);

/// Groups of words, in small letters, that mean one thing: "axis", "fulcrum", "pivot".
using Synonyms = std::vector<std::vector<std::string>>;

/// One choice, by letter, number or its own words (any part that only one choice has); by another
/// name of what it says ("coronal" for the frontal plane); of classes of levers also as "III",
/// "3rd class" or "class 3".
tl::expected<std::size_t, std::string> read_choice(std::string_view typed,
                                                   const std::vector<std::string>& texts,
                                                   const Synonyms& synonyms = {});

} // namespace steelyard::problems
