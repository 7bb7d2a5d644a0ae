#include "paint/type/typesetting.h"

#include "paint/picture/painter.h"
#include "publish/files/written_text.h"
#include "words/formula_parts.h"

#include <algorithm>

namespace steelyard::paint {
using namespace publish;
namespace {

struct FreeFontOptions {
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
struct FreeFont {
    void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
struct FreeAttributes {
    void operator()(PangoAttrList* attributes) const { pango_attr_list_unref(attributes); }
};
struct FreeIterator {
    void operator()(PangoLayoutIter* iterator) const { pango_layout_iter_free(iterator); }
};
using Attributes = std::unique_ptr<PangoAttrList, FreeAttributes>;

/// Space between baselines, as a multiple of the size: enough for indices not to touch.
constexpr double kLeading = 1.4;
constexpr double kIndexSize = 0.72;
constexpr double kIndexDrop = 0.22;

/// Letters exactly where they belong at any size: no fitting to the pixel grid, which would make
/// a picture's text wider or narrower than the same text in the SVG.
void unhinted(PangoContext* context) {
    const std::unique_ptr<cairo_font_options_t, FreeFontOptions> options(
        cairo_font_options_create());
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(context, options.get());
    pango_context_set_round_glyph_positions(context, FALSE);
}

double share_left_of(scene::Align align) {
    switch (align) {
    case scene::Align::left:
        return 0.0;
    case scene::Align::centre:
        return 0.5;
    case scene::Align::right:
        return 1.0;
    }
    return 0.0;
}

double points(int pango_units) {
    return static_cast<double>(pango_units) / PANGO_SCALE;
}

void add_index(PangoAttrList* attributes, std::size_t from, std::size_t to, double size) {
    for (PangoAttribute* attribute :
         {pango_attr_size_new_absolute(static_cast<int>(kIndexSize * size * PANGO_SCALE)),
          pango_attr_rise_new(static_cast<int>(-kIndexDrop * size * PANGO_SCALE))}) {
        attribute->start_index = static_cast<guint>(from);
        attribute->end_index = static_cast<guint>(to);
        pango_attr_list_insert(attributes, attribute);
    }
}

/// Pango would break a line after the stroke of "m/s²".
void keep_units_whole(std::string_view text, PangoAttrList* attributes) {
    for (std::size_t at = text.find('/'); at != std::string_view::npos;
         at = text.find('/', at + 1)) {
        std::size_t to = at + 2;
        while (to < text.size() && (static_cast<unsigned char>(text[to]) & 0xC0U) == 0x80U)
            ++to; // the next character has more bytes
        PangoAttribute* const whole = pango_attr_allow_breaks_new(FALSE);
        whole->start_index = static_cast<guint>(at);
        whole->end_index = static_cast<guint>(std::min(to, text.size()));
        pango_attr_list_insert(attributes, whole);
    }
}

/// The formula without its underscores; its indices are made small.
std::string with_indices(std::string_view formula, double size, PangoAttrList* attributes) {
    std::string set;
    for (const words::FormulaPart& part : words::formula_parts(formula)) {
        if (part.index)
            add_index(attributes, set.size(), set.size() + part.text.size(), size);
        set += part.text;
    }
    return set;
}

/// A line of a broken paragraph by itself, with the blank at which it was broken: Pango leaves that
/// out of what it paints, and whoever has the page read to them hears two words as one.
std::shared_ptr<PangoLayout> line_with_blank(PangoLayout& paragraph, const PangoLayoutLine& line) {
    const std::string_view text = pango_layout_get_text(&paragraph);
    const auto from = static_cast<std::size_t>(line.start_index);
    auto to = from + static_cast<std::size_t>(line.length);
    while (to < text.size() && text[to] == ' ')
        ++to;
    const std::shared_ptr<PangoLayout> alone(pango_layout_copy(&paragraph), Unref());
    const Attributes attributes(pango_attr_list_copy(pango_layout_get_attributes(&paragraph)));
    pango_attr_list_update(attributes.get(), static_cast<int>(to),
                           static_cast<int>(text.size() - to), 0);
    pango_attr_list_update(attributes.get(), 0, static_cast<int>(from), 0);
    pango_layout_set_attributes(alone.get(), attributes.get());
    pango_layout_set_width(alone.get(), -1);
    pango_layout_set_text(alone.get(), text.data() + from, static_cast<int>(to - from));
    return alone;
}

} // namespace

Typesetter::Typesetter(cairo_t* surface, const std::string& family)
    : family_(family), context_(pango_cairo_create_context(surface)) {
    unhinted(context_.get());
}

std::unique_ptr<PangoLayout, Unref> Typesetter::layout(std::string_view text,
                                                       const TextStyle& style) const {
    std::unique_ptr<PangoLayout, Unref> layout(pango_layout_new(context_.get()));
    const std::unique_ptr<PangoFontDescription, FreeFont> font(pango_font_description_new());
    pango_font_description_set_family(font.get(), family_.c_str());
    pango_font_description_set_absolute_size(font.get(), style.size_pt * PANGO_SCALE);
    pango_font_description_set_weight(font.get(),
                                      style.strong ? PANGO_WEIGHT_SEMIBOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout.get(), font.get());
    const Attributes attributes(pango_attr_list_new());
    std::string safe = one_line(text);
    if (style.formula)
        safe = with_indices(safe, style.size_pt, attributes.get());
    keep_units_whole(safe, attributes.get());
    pango_layout_set_attributes(layout.get(), attributes.get());
    pango_layout_set_text(layout.get(), safe.c_str(), static_cast<int>(safe.size()));
    pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
    return layout;
}

void Typesetter::paint_label(cairo_t* surface, const scene::Label& label) const {
    const auto text = layout(label.text, {scene::text_height_px(label.size), label.strong});
    pango_attr_list_insert(pango_layout_get_attributes(text.get()),
                           pango_attr_font_features_new("tnum=1"));
    // SVG text runs from left to right unless told otherwise; so does this.
    pango_layout_set_auto_dir(text.get(), FALSE);
    PangoRectangle extent{};
    pango_layout_get_extents(text.get(), nullptr, &extent);
    cairo_save(surface);
    cairo_translate(surface, label.at.x(), label.at.y());
    cairo_rotate(surface, label.turn_rad);
    cairo_move_to(surface, -points(extent.width) * share_left_of(label.align),
                  -points(pango_layout_get_baseline(text.get())));
    pango_cairo_show_layout(surface, text.get());
    cairo_restore(surface);
}

Pieces Typesetter::paragraph(std::string_view text, const TextStyle& style, double width_pt) const {
    const std::shared_ptr<PangoLayout> set = layout(text, style);
    pango_layout_set_width(set.get(), static_cast<int>(width_pt * PANGO_SCALE));
    pango_layout_set_wrap(set.get(), PANGO_WRAP_WORD_CHAR);

    const double leading = kLeading * style.size_pt;
    Pieces pieces;
    const std::unique_ptr<PangoLayoutIter, FreeIterator> lines(pango_layout_get_iter(set.get()));
    do {
        PangoRectangle extent{};
        pango_layout_iter_get_line_extents(lines.get(), nullptr, &extent);
        // The baseline is placed by the leading, not by the line's own height, which a letter
        // from another font would change.
        const auto paint = [line = line_with_blank(
                                *set, *pango_layout_iter_get_line_readonly(lines.get())),
                            role = style.role, leading, size = style.size_pt,
                            left = points(extent.x)](cairo_t* surface) {
            set_colour(surface, text_colour_of(role, scene::Look::print));
            cairo_move_to(surface, left, 0.5 * (leading - size) + 0.85 * size);
            pango_cairo_show_layout_line(surface, pango_layout_get_line_readonly(line.get(), 0));
        };
        pieces.push_back({leading, paint, style.tag, !pieces.empty()});
    } while (pango_layout_iter_next_line(lines.get()) != 0);
    return pieces;
}

Piece Typesetter::line(std::string_view text, const TextStyle& style) const {
    constexpr double kUnbroken = -1.0 / PANGO_SCALE; // Pango's -1: no width, so no breaking
    return paragraph(text, style, kUnbroken).front();
}

double Typesetter::width(std::string_view text, const TextStyle& style) const {
    PangoRectangle extent{};
    pango_layout_get_extents(layout(text, style).get(), nullptr, &extent);
    return points(extent.width);
}

} // namespace steelyard::paint
