#pragma once
// What a question about a body draws.

#include "problems/draw/instance.h"

namespace steelyard::problems {

/// The picture of an instance whose family has a body; labels are left to the caller.
BodyPicture body_picture(const Instance& instance);

/// The line on the drawing that shows a length of the solution, in the plane of the view; empty for
/// what is no length, and for what is seen end on.
std::optional<DrawnQuantity> drawn_length(const Term& term, const BodyPlan& plan,
                                          const BodySolution& solved);

} // namespace steelyard::problems
