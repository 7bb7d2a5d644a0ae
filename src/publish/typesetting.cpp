#include "publish/typesetting.h"

#include "publish/written_text.h"

namespace steelyard::publish {
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

} // namespace

Typesetter::Typesetter(cairo_t* surface, const std::string& family)
    : surface_(surface), family_(family), context_(pango_cairo_create_context(surface)) {
    unhinted(context_.get());
}

std::unique_ptr<PangoLayout, Unref> Typesetter::layout(std::string_view text, double size,
                                                       bool strong) const {
    std::unique_ptr<PangoLayout, Unref> layout(pango_layout_new(context_.get()));
    const std::unique_ptr<PangoFontDescription, FreeFont> font(pango_font_description_new());
    pango_font_description_set_family(font.get(), family_.c_str());
    pango_font_description_set_absolute_size(font.get(), size * PANGO_SCALE);
    pango_font_description_set_weight(font.get(),
                                      strong ? PANGO_WEIGHT_SEMIBOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout.get(), font.get());
    const std::unique_ptr<PangoAttrList, FreeAttributes> attributes(pango_attr_list_new());
    pango_attr_list_insert(attributes.get(), pango_attr_font_features_new("tnum=1"));
    pango_layout_set_attributes(layout.get(), attributes.get());
    const std::string safe = one_line(text);
    pango_layout_set_text(layout.get(), safe.c_str(), static_cast<int>(safe.size()));
    return layout;
}

void Typesetter::paint_label(const scene::Label& label) const {
    const auto line = layout(label.text, scene::text_height_px(label.size), label.strong);
    // SVG text runs from left to right unless told otherwise; so does this.
    pango_layout_set_auto_dir(line.get(), FALSE);
    pango_layout_set_single_paragraph_mode(line.get(), TRUE);
    PangoRectangle extent{};
    pango_layout_get_extents(line.get(), nullptr, &extent);
    const double width = static_cast<double>(extent.width) / PANGO_SCALE;
    const double baseline =
        static_cast<double>(pango_layout_get_baseline(line.get())) / PANGO_SCALE;
    cairo_save(surface_);
    cairo_translate(surface_, label.at.x(), label.at.y());
    cairo_rotate(surface_, label.turn_rad);
    cairo_move_to(surface_, -width * share_left_of(label.align), -baseline);
    pango_cairo_show_layout(surface_, line.get());
    cairo_restore(surface_);
}

} // namespace steelyard::publish
