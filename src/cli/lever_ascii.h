#pragma once
// A lever drawn with characters, for a terminal.

#include "problems/question.h"

#include <string>
#include <vector>

namespace steelyard::cli {

/// The lever, its axis (^), loads (L) and effort (E) with the way they pull, lettered spots, and a
/// legend with the lengths that the drawing states. At most 72 columns wide, plain ASCII but for
/// the names in the legend.
std::string draw_in_ascii(const problems::LeverPicture& picture,
                          const std::vector<problems::Spot>& spots);

} // namespace steelyard::cli
