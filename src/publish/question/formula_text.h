#pragma once
// Symbols with their indices in a line of formula text.

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// A stretch of a formula; an index stands small and low after what comes before it.
struct FormulaPart {
    std::string text;
    bool index = false;
};

/// "τ_load = 5" as "τ", index "load", " = 5": letters and digits that an underscore joins to a
/// symbol are its index, and the underscore goes. Other underscores stay.
std::vector<FormulaPart> formula_parts(std::string_view formula);

} // namespace steelyard::publish
