#pragma once
// Which limb a segment belongs to, and the hinges of a limb.

#include "mechanics/body/segments.h"

#include <vector>

namespace steelyard::mechanics {

enum class Limb { trunk, right_arm, left_arm, right_leg, left_leg };

/// The limb of a segment; pelvis, trunk and head are the trunk's.
Limb limb_of(Segment segment);

/// The limb of the other side; the trunk is its own.
Limb mirror_of(Limb limb);

/// Every hinge that turns a segment of the limb, from the pelvis outwards.
std::vector<Hinge> hinges_of(Limb limb);

} // namespace steelyard::mechanics
