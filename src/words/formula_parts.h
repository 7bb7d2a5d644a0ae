#pragma once
// Symbols with their indices in a line of formula text: the one reading of our notation, for the
// window, pages, PDF and exchange formats. A terminal shows the line as it is.

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::words {

/// A stretch of a formula; an index stands small and low after what comes before it.
struct FormulaPart {
    std::string text;
    bool index = false;
};

/// "torque_load = 5" as "torque", index "load", " = 5": letters and digits that an underscore joins
/// to a symbol are its index, with a comma between two ("torque_load,hip"), and the underscore
/// goes. Other underscores stay. Text without symbols comes back as one part.
std::vector<FormulaPart> formula_parts(std::string_view formula);

} // namespace steelyard::words
