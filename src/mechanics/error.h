#pragma once
// What is wrong with the numbers handed to a computation. The layer that read them knows the file
// and the line; this says which number, by its key, and why it cannot be used.

#include <optional>
#include <string>

namespace steelyard::mechanics {

enum class Fault {
    not_finite,   ///< NaN or infinite
    out_of_range, ///< finite, but no such thing exists (negative mass, a lever of 10 km)
    zero_length,  ///< the lever or segment has no length
    off_lever,    ///< a place that lies before the start or past the end of the lever
    unknown_name, ///< a joint, segment or muscle that the body does not have
    inconsistent, ///< single values are fine, together they cannot be
};

/// An input that cannot be computed with. Physical special cases (a force through the axis, no
/// lever class) are outcomes in the result, not errors.
struct MechanicsError {
    Fault fault = Fault::not_finite;
    std::string key;      ///< which input, as a path of keys, counted from 0: "load[1].mass"
    std::string expected; ///< what would be accepted, as a phrase: "a mass from 0 to 1000000 kg"
};

/// What a check found wrong, when it found anything.
using Found = std::optional<MechanicsError>;

} // namespace steelyard::mechanics
