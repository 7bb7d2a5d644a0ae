#pragma once
// A drawing painted with Cairo and Pango, on a picture or on a page of paper.

#include "publish/pictures/picture_size.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <cairo.h>

#include <string>

namespace steelyard::paint {

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

/// Paints a drawing scaled to fit the size and centred on its sheet.
void paint_fitted(cairo_t* surface, const scene::Drawing& drawing, const PaintStyle& style,
                  publish::PictureSize size);

/// Sets Cairo's colour.
void set_colour(cairo_t* surface, scene::Rgb colour, double opacity = 1.0);

} // namespace steelyard::paint
