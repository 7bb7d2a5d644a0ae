#pragma once
// How hard an elastic band pulls.

#include "mechanics/error.h"
#include "mechanics/resistance/resistance.h"

#include <tl/expected.hpp>

namespace steelyard::mechanics {

/// Pull of a band at a length between its ends.
/// @return [N], 0 when slack; an error when stretched beyond its table ("law": the longest length
///         that the table covers)
tl::expected<double, MechanicsError> band_force(const Band& band, double length_m);

} // namespace steelyard::mechanics
