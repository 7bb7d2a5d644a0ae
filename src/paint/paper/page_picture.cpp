#include "paint/paper/page_picture.h"

#include "paint/paper/page_painter.h"
#include "paint/paper/worksheet_blocks.h"
#include "paint/picture/cairo_objects.h"
#include "paint/picture/painter.h"
#include "paint/type/typeface.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace steelyard::paint {
using namespace publish;
namespace {

/// Cairo's pixels have blue first on little-endian machines, as one 32-bit number on all.
std::vector<std::uint8_t> rgba_of(cairo_surface_t* image) {
    cairo_surface_flush(image);
    const int width = cairo_image_surface_get_width(image);
    const int height = cairo_image_surface_get_height(image);
    const unsigned char* row = cairo_image_surface_get_data(image);
    std::vector<std::uint8_t> rgba;
    rgba.reserve(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 4);
    for (int y = 0; y < height; ++y, row += cairo_image_surface_get_stride(image)) {
        for (int x = 0; x < width; ++x) {
            std::uint32_t pixel = 0;
            std::memcpy(&pixel, row + 4 * x, sizeof pixel);
            for (const int shift : {16, 8, 0})
                rgba.push_back(static_cast<std::uint8_t>(pixel >> shift & 0xFFU));
            rgba.push_back(0xFF);
        }
    }
    return rgba;
}

} // namespace

tl::expected<PagePicture, PublishError> page_picture(const Worksheet& sheet,
                                                     const problems::Bank& bank, SheetSide side,
                                                     int page_number, int height_px,
                                                     const Progress& progress) {
    const auto family = paper_family();
    if (!family)
        return tl::make_unexpected(family.error());
    const PageFormat format = page_format(sheet.paper, sheet.large_print);
    const double px_per_pt = height_px / format.height_pt;
    const PictureSize size{static_cast<int>(std::lround(px_per_pt * format.width_pt)), height_px};
    if (auto fault = fault_in(size))
        return tl::make_unexpected(std::move(*fault));
    const CairoSurface image(
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, size.width_px, size.height_px));
    const CairoContext context(cairo_create(image.get()));
    cairo_t* const surface = context.get();
    set_colour(surface, scene::colour_of(scene::Role::sheet, scene::Look::print));
    cairo_paint(surface);
    cairo_scale(surface, px_per_pt, px_per_pt);

    const PaperBlocks blocks =
        side == SheetSide::key ? key_blocks(sheet, bank) : sheet_blocks(sheet);
    const Typesetter type(surface, *family);
    const PageSetting page{format, type};
    const int pages = count_pages(page, blocks, stretch_of(progress, 0, 1, 2));
    if (pages == 0)
        return stopped_work();
    PagePicture picture{
        size.width_px, size.height_px, {}, std::clamp(page_number, 1, pages), pages};
    PagePainter painter(surface, page, sheet.code, pages);
    painter.paint_only(picture.page);
    if (!painter.paint(blocks, stretch_of(progress, 1, 2, 2)))
        return stopped_work();
    if (cairo_status(surface) != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(
            PublishError{PublishFault::no_memory, "The page could not be painted."});
    }
    picture.rgba = rgba_of(image.get());
    return picture;
}

} // namespace steelyard::paint
