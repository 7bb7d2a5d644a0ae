#pragma once
// The check that every number from outside goes through.

#include "mechanics/error.h"

#include <cmath>
#include <optional>
#include <string_view>

namespace steelyard::mechanics {

/// The fault of a number that is not finite or lies outside [low, high]; empty when it is fine.
/// Builds its texts only when there is a fault, so that a check costs nothing on the way.
inline std::optional<MechanicsError> outside(double value, double low, double high,
                                             std::string_view key, std::string_view expected) {
    if (value >= low && value <= high)
        return std::nullopt;
    const Fault fault = std::isfinite(value) ? Fault::out_of_range : Fault::not_finite;
    return MechanicsError{fault, std::string(key), std::string(expected)};
}

/// The same fault seen from one level further out: "mass" becomes "resistances[2].mass".
inline MechanicsError within_key(std::string_view outer, MechanicsError fault) {
    fault.key = std::string(outer) + "." + fault.key;
    return fault;
}

inline std::string indexed(std::string_view list, std::size_t index) {
    return std::string(list) + "[" + std::to_string(index) + "]";
}

} // namespace steelyard::mechanics
