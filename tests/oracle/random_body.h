#pragma once
// Bodies, poses, motions and loads at random: no person's, but the mechanics must not care.

#include "mechanics/body/solve_body.h"
#include "mechanics/lever/random_lever.h"

namespace steelyard::oracle {

/// Segments with any centre of mass, any inertia that a solid can have, and joints anywhere.
mechanics::Body random_body(mechanics::RandomNumbers& random);

/// Every hinge anywhere within its range; the anchor somewhere, leaning somehow.
mechanics::Pose random_pose(mechanics::RandomNumbers& random, mechanics::Segment anchored);

mechanics::Motion random_motion(mechanics::RandomNumbers& random);

/// A push of any direction on any place of a segment.
mechanics::Resistance random_push(mechanics::RandomNumbers& random, mechanics::Segment segment);

} // namespace steelyard::oracle
