#pragma once
// A drawing painted with Cairo and Pango, on a picture or on a page of paper.

#include "publish/error.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <cairo.h>
#include <tl/expected.hpp>

#include <string>

namespace steelyard::publish {

/// How a drawing is painted.
struct PaintStyle {
    scene::Look look = scene::Look::light;
    std::string family; ///< font family of the labels, from text_family()
    /// Fill the sheet first. Off on a page that has its own paper.
    bool sheet = true;
};

/// Paints a drawing with its top left corner at the origin of the surface's present frame, one
/// unit per sheet pixel. The drawing must be without fault (see fault_in).
void paint_drawing(cairo_t* surface, const scene::Drawing& drawing, const PaintStyle& style);

/// Sets Cairo's colour.
void set_colour(cairo_t* surface, scene::Rgb colour, double opacity = 1.0);

} // namespace steelyard::publish
