#pragma once
// Lines and paragraphs of text with Pango, on a Cairo surface.

#include "scene/drawing.h"

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <string_view>

namespace steelyard::publish {

/// Gives back what GLib counts references of.
struct Unref {
    void operator()(gpointer object) const { g_object_unref(object); }
};

/// Sets text in one family with digits of equal width. Sizes are in the units of the surface's
/// frame: pixels in a drawing, points on a page.
class Typesetter {
public:
    Typesetter(cairo_t* surface, const std::string& family);

    /// Paints a label in Cairo's present colour, its baseline through `at`.
    void paint_label(const scene::Label& label) const;

    /// A layout in this family, for a caller who sets paragraphs.
    std::unique_ptr<PangoLayout, Unref> layout(std::string_view text, double size,
                                               bool strong) const;

private:
    cairo_t* surface_;
    std::string family_;
    std::unique_ptr<PangoContext, Unref> context_;
};

} // namespace steelyard::publish
