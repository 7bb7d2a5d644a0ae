#pragma once
// The shape of a lever changed by hand: corners pulled, added and removed. What acts on it stays
// where it is in the room, as far as the new shape reaches there.

#include "mechanics/lever/lever.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace steelyard::app {

/// The lever on another path. Each place goes to the place of the new path that lies nearest to
/// where it was.
/// @param path_m  two corners or more
mechanics::Lever on_path(mechanics::Lever lever, std::vector<mechanics::Vec2> path_m);

/// Where a load acts along the lever [m]; a pure torque acts nowhere.
std::optional<double> place_of(const mechanics::Load& load);

/// A place for something new: on the side of the axis where the lever is longer, to the centimetre
/// [m].
double free_place_m(const mechanics::Lever& lever);

/// A further corner in the middle of the longest straight piece. Nothing else changes by it.
std::vector<mechanics::Vec2> with_corner(std::vector<mechanics::Vec2> path_m);

/// Without a corner; the last two stay. An index that is none of its corners changes nothing.
std::vector<mechanics::Vec2> without_corner(std::vector<mechanics::Vec2> path_m,
                                            std::size_t corner);

} // namespace steelyard::app
