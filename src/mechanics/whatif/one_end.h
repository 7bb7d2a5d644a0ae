#pragma once
// One end of a repetition by itself: start and end of a path are posed apart.

#include "mechanics/whatif/exercise.h"

namespace steelyard::mechanics {

/// Which poses of a repetition a change is meant for.
enum class PoseEnds {
    both,  ///< start and end alike
    start, ///< the pose that the path leaves
    end,   ///< the pose that it reaches
};

/// The exercise held at one of its ends. With `both`, or without a path, the exercise as it is.
Exercise held_at(const Exercise& exercise, PoseEnds ends);

/// The exercise with the angles of a held one at one of its ends; what the hinge does half-way
/// follows by half of its change. With `both`, or without a path, the other exercise itself.
/// @param held  as held_at made it, its angles changed
Exercise with_end_of(const Exercise& exercise, PoseEnds ends, const Exercise& held);

} // namespace steelyard::mechanics
