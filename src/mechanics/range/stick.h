#pragma once
// Movements in which something stays where it is: contacts that stick, two hands on one bar.

#include "mechanics/body/solve_body.h"
#include "mechanics/range/pose_path.h"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// A pose and the way from it.
struct Movement {
    Pose start;
    std::optional<PosePath> path; ///< empty: the pose is held
};

/// A part that sticks and comes off its place by more than this cannot stay there [m].
inline constexpr double kComesOff_m = 5.0e-3;

/// The movement of a case with what sticks kept in its place: start and end turn as little as that
/// takes, and the way between them is bent. What sticks:
/// - contacts that say so keep their touching_points where they are;
/// - hands that hold one bar keep the distance that they have at the start, where both sides move
///   alike; and when the bar is to go straight, they stay on the line between its first place and
///   its last.
///
/// The hinges that follow are those of the contact's own limb; for a contact of the trunk those of
/// the limb that is fixed in the world. When that limb's mirror image is held alike from start to
/// end it goes along; so do both arms when one is fixed and the other sticks. With a bar they are
/// those hinges of the arms that turn on the way.
/// @param body_case  its pose is the start
/// @param as_in      where the contacts that stick are at their place; has the same anchor
/// @param kept       hinges that must not follow
/// @return the movement; as given, to the last bit, where nothing comes off its place; or what
///         cannot stay ("support.contacts[1].stick", "resistances[0]")
/// Source: reach_points.
tl::expected<Movement, MechanicsError> stick(const BodyCase& body_case,
                                             const std::optional<PosePath>& path, const Pose& as_in,
                                             const std::vector<Hinge>& kept = {});

} // namespace steelyard::mechanics
