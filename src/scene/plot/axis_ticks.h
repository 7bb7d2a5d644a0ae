#pragma once
// Round numbers along an axis of a plot.

#include <vector>

namespace steelyard::scene {

/// Multiples of one round step of degrees (1, 2, 5, 10, 15, 30, 45, 90, ...) from the first not
/// below `low_deg` to the last not above `high_deg`.
/// @param low_deg, high_deg  finite, low < high
/// @param at_most            how many there may be, 2 or more
std::vector<double> round_angle_ticks(double low_deg, double high_deg, int at_most);

} // namespace steelyard::scene
