#pragma once
// How far a load in the hands is from a joint, and the swing of the arm that brings it nearer.

#include "mechanics/whatif/change.h"

namespace steelyard::mechanics {

/// A hand's horizontal distance as the arm swings by δ about one axis of the shoulder:
/// distance(δ) = middle + radius · cos(δ - top).
struct ArmSwing {
    Hinge shoulder = Hinge::right_shoulder_flexion; ///< the hinge that swings
    bool both_sides = false;                        ///< the other arm is held alike and swings too
    double middle_m = 0.0;
    double radius_m = 0.0;
    double top_rad = 0.0;
    Interval swing_rad; ///< δ within the hinge's range, on the side of the turning point where the
                        ///< hand is now, so that each distance belongs to one δ

    double distance_m(double delta_rad) const;
    /// The swing that gives a distance of the range of distances.
    double delta_rad(double distance_m) const;
};

/// The swing for a reach of an exercise.
/// @return the swing, or why there is none: the load is not in a hand, the hinge moves with the arm
///         or has an upright axis, the body hangs on its hands, the swing leaves the distance as
///         it is
tl::expected<ArmSwing, MechanicsError> arm_swing(const LoadReach& reach, const Exercise& exercise);

/// True when a hinge is held like its mirror image from start to end.
bool held_alike_on_both_sides(const Exercise& exercise, Hinge hinge);

/// Adds to a hinge's angle at the start and at the end of the path.
void shift_hinge(Exercise& exercise, Hinge hinge, bool both_sides, double delta_rad);

/// A changed exercise with what sticks where it was before the change: see range/stick.h.
/// @param kept  hinges that the change has turned; they do not follow
/// @return the exercise, or what cannot stay
tl::expected<Exercise, MechanicsError> kept_in_place(Exercise changed, const Exercise& before,
                                                     const std::vector<Hinge>& kept);

/// Shifts of a hinge that keep it in its range at the start and at the end of the path.
Interval allowed_shift(const Exercise& exercise, Hinge hinge);

} // namespace steelyard::mechanics
