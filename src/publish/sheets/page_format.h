#pragma once
// Sizes on paper, in points of 1/72 inch.

namespace steelyard::publish {

enum class PaperSize { a4, letter };

/// A page and the sizes of what is set on it. `large_print` enlarges all type; the paper stays.
struct PageFormat {
    double width_pt = 595.28;
    double height_pt = 841.89;
    double left_pt = 62.0;
    double right_pt = 51.0;
    double top_pt = 54.0;
    double bottom_pt = 62.0; ///< the foot stands in it
    double scale = 1.0;      ///< of type and of the space around it

    double content_width_pt() const { return width_pt - left_pt - right_pt; }
    double content_height_pt() const { return height_pt - top_pt - bottom_pt; }

    double body_pt() const { return 10.5 * scale; }
    double small_pt() const { return 8.5 * scale; }
    double heading_pt() const { return 13.0 * scale; }
    double title_pt() const { return 22.0 * scale; }
    /// A step of white space; all gaps are whole steps.
    double step_pt() const { return 4.0 * scale; }
};

/// A4: 210 × 297 mm (ISO 216). Letter: 8.5 × 11 in (ANSI/ASME Y14.1, size A).
/// Large print sets the body in 18 pt: the smallest size that guides for print call large
/// (common practice).
constexpr PageFormat page_format(PaperSize paper, bool large_print) {
    PageFormat page;
    if (paper == PaperSize::letter) {
        page.width_pt = 612.0;
        page.height_pt = 792.0;
    }
    if (large_print) {
        page.scale = 18.0 / 10.5;
        page.left_pt = 54.0;
        page.right_pt = 42.0;
        page.bottom_pt = 80.0;
    }
    return page;
}

} // namespace steelyard::publish
