#pragma once
// Exercises for the tests of what-if, on the body of published_tables.h.

#include "mechanics/whatif/exercise.h"

namespace steelyard::mechanics {

/// A curl with one dumbbell, seated: right elbow from 10 to 130 degrees, slowly.
Exercise curl();
/// The curl with a tempo of two seconds each way.
Exercise curl_with_tempo();
/// Bent over at the low back with a dumbbell in each hand, arms hanging a little forward; pelvis
/// held. Level with the ground at 90 degrees; here 50.
Exercise stoop();
/// The elbow at a right angle, a cable from the hand to a pulley in front, 1 m high.
Exercise cable_hold();
/// The elbow at a right angle, a band from the hand to the floor in front.
Exercise band_hold();

} // namespace steelyard::mechanics
