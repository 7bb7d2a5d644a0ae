#pragma once
// The lever of one joint of an exercise, for the bench: there its axis, effort and load can be
// placed by hand.

#include "mechanics/muscle/muscle_on_body.h"
#include "setup/body/body_setup.h"
#include "setup/lever/lever_setup.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::setup {

/// All that lies beyond a joint as one stiff lever, seen along the joint's axis: its bones are the
/// lever's path, and each force acts where its line crosses them, so that every moment arm, and
/// with it every torque about the joint, stays what it is. What crosses no bone lengthens the path
/// to where it acts.
/// @param posed  the exercise's case as it stands
/// @param mover  the muscle that is to be the effort, of this hinge; null = one is drawn with an
/// arm
///               of 4 cm, which the note says
/// @return the lever, or a sentence saying why this joint makes none: its axis is upright, so that
///         weights turn nothing about it, or the limb is seen end-on
tl::expected<LeverSetup, std::string> lever_of_joint(const BodySetup& setup,
                                                     const mechanics::BodyCase& posed,
                                                     const mechanics::BodyResult& solved,
                                                     mechanics::Hinge hinge,
                                                     const mechanics::Pull* mover);

} // namespace steelyard::setup
