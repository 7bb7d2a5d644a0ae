#pragma once
// A lever drawn with characters, for a terminal.

#include "problems/question/question.h"

#include <string>
#include <vector>

namespace steelyard::cli {

/// A length to point out, drawn with one character above the lever.
struct MarkedLine {
    char character = 'x';
    std::string says; ///< for the legend: "you took"
    problems::DrawnQuantity line;
};

/// A length as the legend states it: "effort arm: 46 cm".
std::string in_legend(const problems::DrawnQuantity& length);

/// The lever, its axis (^), loads (L) and effort (E) with the way they pull, lettered spots, marked
/// lengths, and a legend with the lengths that the drawing states. At most so many columns wide,
/// plain ASCII but for the names in the legend.
std::string draw_in_ascii(const problems::LeverPicture& picture,
                          const std::vector<problems::Spot>& spots, int columns,
                          const std::vector<MarkedLine>& marks = {});

} // namespace steelyard::cli
