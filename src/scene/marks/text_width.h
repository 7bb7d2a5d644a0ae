#pragma once
// How wide a line of text will be, without a font at hand: drawings are laid out the same on every
// machine, painter and platform.

#include "scene/drawing.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::scene {

/// Width of a line of Inter, digits tabular [px].
/// @param scale  enlargement of the text, 1 = 100 %
/// Characters beyond ASCII count as average ones: within a few per cent for the labels of a
/// drawing. Source: advance widths of Inter 4.0, in thousandths of an em.
double text_width_px(std::string_view utf8, TextSize size, bool strong, double scale);

/// A text in lines of at most a width, broken between words; a longer word has its own line.
std::vector<std::string> broken_lines(const std::string& utf8, TextSize size, double scale,
                                      double width_px);

} // namespace steelyard::scene
