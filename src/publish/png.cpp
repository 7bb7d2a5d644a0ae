#include "publish/png.h"

#include "publish/cairo_objects.h"
#include "publish/drawing_check.h"
#include "publish/painter.h"
#include "publish/typeface.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace steelyard::publish {
namespace {

/// 64 million pixels are 256 MB of memory; nobody prints more.
constexpr double kMaxPixels = 64.0e6;

std::optional<PublishError> fault_in(PictureSize size) {
    const double pixels = static_cast<double>(size.width_px) * size.height_px;
    if (size.width_px >= 1 && size.height_px >= 1 && size.width_px <= kMaxSide_px &&
        size.height_px <= kMaxSide_px && pixels <= kMaxPixels) {
        return std::nullopt;
    }
    return PublishError{PublishFault::bad_size,
                        fmt::format("No picture is made of {} by {} px. Choose sides from 1 to {} "
                                    "px, at most {} million pixels in all.",
                                    size.width_px, size.height_px, kMaxSide_px,
                                    kMaxPixels / 1.0e6)};
}

PublishError failed(cairo_status_t status) {
    return {PublishFault::no_memory,
            fmt::format("The picture could not be painted: {}. Try a smaller size.",
                        cairo_status_to_string(status))};
}

void paint_fitted(cairo_t* context, const scene::Drawing& drawing, const PaintStyle& style,
                  PictureSize size) {
    set_colour(context, scene::colour_of(scene::Role::sheet, style.look));
    cairo_paint(context);
    const double scale =
        std::min(size.width_px / drawing.size_px.x(), size.height_px / drawing.size_px.y());
    cairo_translate(context, 0.5 * (size.width_px - scale * drawing.size_px.x()),
                    0.5 * (size.height_px - scale * drawing.size_px.y()));
    cairo_scale(context, scale, scale);
    paint_drawing(context, drawing, style);
}

} // namespace

tl::expected<std::string, PublishError> png_of(const scene::Drawing& drawing, scene::Look look,
                                               PictureSize size) {
    for (auto fault : {fault_in(drawing), fault_in(size)}) {
        if (fault) {
            return tl::make_unexpected(std::move(*fault));
        }
    }
    const auto family = text_family();
    if (!family) {
        return tl::make_unexpected(family.error());
    }
    const CairoSurface surface(
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, size.width_px, size.height_px));
    const CairoContext context(cairo_create(surface.get()));
    paint_fitted(context.get(), drawing, {look, *family}, size);
    if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(failed(status));
    }
    std::string bytes;
    const auto status = cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes);
    if (status != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(failed(status));
    }
    return bytes;
}

} // namespace steelyard::publish
