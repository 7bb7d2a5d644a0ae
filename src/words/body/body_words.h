#pragma once
// What an exercise's result is called in words: the same in the window, the terminal and under a
// drawing.

#include "setup/units/units.h"
#include "words/body/body_reading.h"

#include <string>
#include <vector>

namespace steelyard::words {

/// What a joint is called where its side does not matter: "hip", "low back".
std::string joint_word(mechanics::Hinge hinge);

/// Which turning of its joint a hinge is, without a direction where it has a word of its own:
/// "flexion", "rotation", "side bend".
std::string movement_word(mechanics::Hinge hinge);

/// What an axis is called among others: the joint's word, and where two axes are of one joint their
/// movement too: "shoulder abduction", "shoulder rotation".
/// @param axes  all that are shown together
std::string axis_word(const std::vector<mechanics::Hinge>& axes, mechanics::Hinge axis);

/// "extension": what the muscles must do about a hinge to hold a torque of this sign.
std::string_view asked_of_muscles(mechanics::Hinge hinge, double muscle_Nm);

/// Why no muscle force is said about a hinge, in a sentence; empty where one is, or where the
/// muscles rest.
std::string why_no_force(const mechanics::MuscleSolution& solution, mechanics::Hinge hinge,
                         setup::UnitSystem units);

/// The whole reading in a few sentences, for a caption and for readers who cannot see the drawing:
/// where on the path, the torque about each joint, the pull of the muscles and the joint reaction
/// at the first, or why they are not said.
/// @param reading  of the joints that are to be told, the one it is about first
std::string body_summary(const setup::BodySetup& setup, const BodyReading& reading,
                         setup::UnitSystem units);

} // namespace steelyard::words
