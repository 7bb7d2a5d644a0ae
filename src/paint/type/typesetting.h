#pragma once
// Lines and paragraphs of text with Pango, on a Cairo surface.

#include "paint/paper/flow.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <string_view>

namespace steelyard::paint {

/// Gives back what GLib counts references of.
struct Unref {
    void operator()(gpointer object) const { g_object_unref(object); }
};

/// How a paragraph is set on paper.
struct TextStyle {
    double size_pt = 10.5;
    bool strong = false;
    scene::Role role = scene::Role::ink;
    /// Letters after an underscore are set as an index: "F_load" as F with a small "load".
    bool formula = false;
    Tag tag = Tag::paragraph;
};

/// Sets text in one family. Labels of drawings have digits of equal width, as on the stage; running
/// text has not. Sizes are in the units of the surface's
/// frame: pixels in a drawing, points on a page.
class Typesetter {
public:
    Typesetter(cairo_t* surface, const std::string& family);

    /// Paints a label in Cairo's present colour, its baseline through `at`.
    void paint_label(cairo_t* surface, const scene::Label& label) const;

    /// A paragraph as one piece per line, broken so that no line is wider than the width; a word
    /// that is wider is broken within. Painted in the colours of the print look.
    Pieces paragraph(std::string_view text, const TextStyle& style, double width_pt) const;

    /// One line, unbroken.
    Piece line(std::string_view text, const TextStyle& style) const;
    double width(std::string_view text, const TextStyle& style) const;

    const std::string& family() const { return family_; }

private:
    std::unique_ptr<PangoLayout, Unref> layout(std::string_view text, const TextStyle& style) const;

    std::string family_;
    std::unique_ptr<PangoContext, Unref> context_;
};

} // namespace steelyard::paint
