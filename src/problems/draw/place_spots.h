#pragma once
// Where a place question's answer lies on its drawing, and the spots beside it.

#include "problems/draw/instance.h"

namespace steelyard::problems {

/// Where the right place is, in the setup's frame [m]; of a line the point where the effort acts.
/// Only for a place family with a solved instance.
mechanics::Vec2 place_target(const Family& family, const Instance& instance);

/// Finds the spots, draws the order of their letters and makes sure that exactly one is right and
/// that the others lie well away.
Refusal find_spots(const Family& family, Random& random, Instance& instance);

} // namespace steelyard::problems
