#pragma once
// A drawing painted with Cairo and Pango, on a picture or on a page of paper.

#include "publish/files/error.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <cairo.h>
#include <tl/expected.hpp>

#include <optional>
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

/// Width and height of a picture [px].
struct PictureSize {
    int width_px = 1280;
    int height_px = 720;
};

/// Paints a drawing scaled to fit the size and centred on its sheet.
void paint_fitted(cairo_t* surface, const scene::Drawing& drawing, const PaintStyle& style,
                  PictureSize size);

/// Why no picture has this size, or nothing.
std::optional<PublishError> fault_in(PictureSize size);

/// Sets Cairo's colour.
void set_colour(cairo_t* surface, scene::Rgb colour, double opacity = 1.0);

} // namespace steelyard::publish
