#pragma once
// Changes of an exercise in the words and moves of the gym: which of them a coach would ask for,
// how readily, and how that is said. Common practice, no source.

#include "mechanics/whatif/whatif.h"
#include "setup/units/units.h"

#include <string>
#include <vector>

namespace steelyard::words {

/// The changes that a coach would ask for to change the torque at a hinge: loads, distances, bands
/// and cables, tempo, and of the angles those that one can be told to hold. Turns of wrist,
/// forearm, neck, shoulder and trunk are among them only where they are asked about; legs on the
/// floor move together.
std::vector<mechanics::Change> gym_changes(const mechanics::Exercise& exercise,
                                           mechanics::Hinge asked);

/// What a change is about, without a direction: "load of dumbbell", "trunk lean".
std::string gym_name(const mechanics::Change& change, const mechanics::Exercise& exercise);

/// A change to a value of its range, without a full stop.
struct GymStep {
    std::string step; ///< "Dumbbell 2.00 kg lighter", "Elbows 20.0° more bent"
    /// "6.00 kg instead of 8.00 kg"; of an angle "through the whole range", or empty where the pose
    /// is held.
    std::string values;
};
GymStep gym_step(const mechanics::Change& change, const mechanics::ChangeRange& range, double value,
                 const mechanics::Exercise& exercise, setup::UnitSystem units);

/// Both in one: "Dumbbell 2.00 kg lighter: 6.00 kg instead of 8.00 kg".
std::string gym_text(const mechanics::Change& change, const mechanics::ChangeRange& range,
                     double value, const mechanics::Exercise& exercise, setup::UnitSystem units);

/// Puts the ways into the order in which a coach would try them: how natural they are, then how
/// small. What is too small to be told apart (an angle below 3°, a length below 1 cm: our own rule,
/// no source) is left out.
void order_for_the_gym(mechanics::RankedWays& ways, const mechanics::Exercise& exercise);

} // namespace steelyard::words
