#pragma once
// What the figures of a document show, in words, gathered while they are painted.

#include <cairo.h>

#include <string>
#include <vector>

namespace steelyard::paint {

/// One text for each figure, in the order in which they are painted.
using FigureWords = std::vector<std::string>;

/// From now on figures painted on this surface tell what they show. The list has to outlive them.
void gather_figures(cairo_t* surface, FigureWords& words);

/// Tells what the figure shows that is being painted; nothing where nobody gathers it.
void note_figure(cairo_t* surface, const std::string& shows);

} // namespace steelyard::paint
