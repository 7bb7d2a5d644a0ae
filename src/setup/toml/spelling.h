#pragma once
// "Did you mean ...?"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// Smallest number of letters to add, drop, change or swap with a neighbour to turn one word into
/// the other, capitals ignored. Source: optimal string alignment distance (Damerau 1964 for the
/// four kinds of slip; Levenshtein 1966).
int spelling_distance(std::string_view one, std::string_view other);

/// The candidate that a misspelt word most likely means, or empty when none is near: at most one
/// slip in a word of up to four letters, two in up to seven, three in a longer one.
std::string nearest_spelling(std::string_view word,
                             const std::vector<std::string_view>& candidates);

} // namespace steelyard::setup
