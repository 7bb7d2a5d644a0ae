#pragma once
// An exercise posed by hand: a point of the body is pulled to a place, and the limb follows.

#include "mechanics/range/inverse_kinematics.h"
#include "mechanics/whatif/exercise.h"

namespace steelyard::mechanics {

/// A pull on the body of an exercise.
struct PullOnBody {
    BodyPoint point;            ///< what is pulled
    Vec3 to_m = Vec3::Zero();   ///< where to [m]
    Vec3 sight = Vec3::UnitZ(); ///< unit; how far away along it does not count
    double progress = 0.0;      ///< the place of the path at which it is pulled, 0 to 1
};

/// The hinges that follow a pull, nearest first.
///
/// Of the joints between the point and what carries the body those of the same limb turn, two at
/// most: shoulder and elbow for the hand, the shoulder for the elbow, hip and knee for a free foot,
/// knee and ankle for the hip of a standing body, the hips for the trunk. Wrist, ball of the foot,
/// neck and lumbar joint turn only where the exercise moves them, or where nothing else would. Of
/// a joint's hinges those turn whose axis lies more along the line of sight than across it: what
/// is seen to turn. The other limb goes along where it is held alike and does the same work.
/// Each may turn as far as it stays in its range from the start to the end of the path.
std::vector<FreeHinge> hinges_that_follow(const Exercise& exercise, const PullOnBody& pull);

/// The exercise with the pose pulled: each hinge's angle shifts by as much at the start and at the
/// end of the path, so that the exercise makes the same way from another place.
/// What a standing leg carries keeps its direction in space as far as the next joint allows: the
/// trunk stays as upright as it was when the hip is pulled down, and arms that hold something keep
/// hanging when the trunk is bent.
/// @return the exercise, unchanged where nothing can follow; or what is wrong with the pull
///         ("point")
tl::expected<Exercise, MechanicsError> pulled(const Exercise& exercise, const PullOnBody& pull);

} // namespace steelyard::mechanics
