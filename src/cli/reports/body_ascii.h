#pragma once
// A body drawn with characters, for a terminal: a figure of sticks.

#include "cli/reports/lever_ascii.h"

namespace steelyard::cli {

/// The part of the figure that the question is about, the joints that could be the axis (o, a, b),
/// loads (L, 2, 3) and counted weights (W, X, Y) with the way they pull, lengths that the drawing
/// states, marked lengths, and a legend. What acts along the line of sight is a letter without an
/// arrow. At most so many columns wide, plain ASCII but for the names in the legend. Empty for a
/// body that cannot be solved.
std::string draw_in_ascii(const problems::BodyPicture& picture, int columns,
                          const std::vector<MarkedLine>& marks = {});

} // namespace steelyard::cli
