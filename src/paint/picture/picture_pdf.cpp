#include "paint/picture/picture_pdf.h"

#include "paint/pdf/pdf.h"
#include "paint/picture/painter.h"
#include "paint/type/typeface.h"
#include "publish/pictures/drawing_check.h"

#include <optional>
#include <utility>

namespace steelyard::paint {
using namespace publish;
namespace {

/// CSS and SVG count 96 pixels to the inch, PDF 72 points. Source: CSS Values 4, section 6.2.
constexpr double kPointsPerPixel = 72.0 / 96.0;

} // namespace

tl::expected<std::string, PublishError> picture_pdf(const scene::Drawing& drawing, scene::Look look,
                                                    PictureSize size) {
    for (auto fault : {fault_in(drawing), fault_in(size)})
        if (fault)
            return tl::make_unexpected(std::move(*fault));
    const auto family = text_family();
    if (!family)
        return tl::make_unexpected(family.error());
    PageFormat page;
    page.width_pt = kPointsPerPixel * size.width_px;
    page.height_pt = kPointsPerPixel * size.height_px;
    return pdf_of(page, {drawing.title, drawing.description, ""}, [&](cairo_t* surface) {
        cairo_scale(surface, kPointsPerPixel, kPointsPerPixel);
        paint_fitted(surface, drawing, {look, *family}, size);
        cairo_show_page(surface);
    });
}

} // namespace steelyard::paint
