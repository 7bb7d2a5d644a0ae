#pragma once
// Text broken into lines for a drawing.

#include "scene/drawing.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// The text's words in lines of at most a width; a word that is wider stands alone. One empty line
/// for an empty text.
std::vector<std::string> broken_into_lines(std::string_view text, scene::TextSize size,
                                           double width_px);

/// The text, or as many of its words as fit a width and an ellipsis.
std::string cut_to_width(const std::string& text, scene::TextSize size, bool strong,
                         double width_px);

} // namespace steelyard::publish
