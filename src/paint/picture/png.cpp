#include "paint/picture/png.h"

#include "paint/picture/cairo_objects.h"
#include "paint/picture/painter.h"
#include "paint/type/typeface.h"
#include "publish/pictures/drawing_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace steelyard::paint {
using namespace publish;
namespace {

PublishError failed(cairo_status_t status) {
    return {PublishFault::no_memory,
            fmt::format("The picture could not be painted: {}. Try a smaller size.",
                        cairo_status_to_string(status))};
}

} // namespace

tl::expected<std::string, PublishError> png_of(const scene::Drawing& drawing, scene::Look look,
                                               PictureSize size) {
    for (auto fault : {fault_in(drawing), fault_in(size)})
        if (fault)
            return tl::make_unexpected(std::move(*fault));
    const auto family = text_family();
    if (!family)
        return tl::make_unexpected(family.error());
    const CairoSurface surface(
        cairo_image_surface_create(drawing.has_sheet ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32,
                                   size.width_px, size.height_px));
    const CairoContext context(cairo_create(surface.get()));
    paint_fitted(context.get(), drawing, {look, *family}, size);
    if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS)
        return tl::make_unexpected(failed(status));
    std::string bytes;
    const auto status = cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes);
    if (status != CAIRO_STATUS_SUCCESS)
        return tl::make_unexpected(failed(status));
    return bytes;
}

} // namespace steelyard::paint
