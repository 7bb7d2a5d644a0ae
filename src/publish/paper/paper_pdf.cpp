#include "publish/paper/paper_pdf.h"

#include "publish/files/whole_file.h"
#include "publish/paper/cairo_objects.h"
#include "publish/paper/painter.h"
#include "publish/paper/pdf.h"
#include "publish/paper/typeface.h"
#include "publish/paper/worksheet_blocks.h"
#include "publish/sheets/page_picture.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace steelyard::publish {
namespace {

/// Lays out every block and tells where each run of pieces belongs.
/// @return the number of pages, or 0 when `progress` said stop
int flow_blocks(const PageSetting& page, const PaperBlocks& blocks,
                const std::function<void(int)>& turn,
                const std::function<void(const Pieces&, double)>& put, const Progress& progress) {
    PageFlow flow(page.format.content_height_pt(), turn, put);
    for (std::size_t i = 0; i < blocks.count; ++i) {
        flow.add(blocks.make(page, i));
        if (!goes_on(progress, i + 1, blocks.count)) {
            return 0;
        }
    }
    flow.finish();
    return flow.pages();
}

/// Number of pages, or 0 when `progress` said stop.
int count_pages(const PageSetting& page, const PaperBlocks& blocks, const Progress& progress) {
    return flow_blocks(
        page, blocks, [](int) {}, [](const Pieces&, double) {}, progress);
}

/// Paints pages one after another, or a single one of them.
class PagePainter {
public:
    PagePainter(cairo_t* surface, const PageSetting& page, std::string code, int pages)
        : surface_(surface), page_(page), code_(std::move(code)), pages_(pages) {}

    void paint_only(int number) { only_ = number; }

    void turn(int number) {
        number_ = number;
        if (number > 1 && only_ == 0) {
            cairo_show_page(surface_);
        }
        if (is_painted()) {
            paint_foot(surface_, page_, code_, number, pages_);
        }
    }

    void put(const Pieces& pieces, double top_pt) const {
        if (!is_painted()) {
            return;
        }
        cairo_save(surface_);
        cairo_translate(surface_, page_.format.left_pt, page_.format.top_pt + top_pt);
        paint_pieces(surface_, pieces);
        cairo_restore(surface_);
    }

    /// @return false when `progress` said stop
    bool paint(const PaperBlocks& blocks, const Progress& progress) {
        return flow_blocks(
                   page_, blocks, [&](int number) { turn(number); },
                   [&](const Pieces& pieces, double top) { put(pieces, top); }, progress) != 0;
    }

private:
    bool is_painted() const { return only_ == 0 || only_ == number_; }

    cairo_t* surface_;
    const PageSetting& page_;
    std::string code_;
    int pages_;
    int only_ = 0; ///< 0 = all
    int number_ = 0;
};

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
            for (const int shift : {16, 8, 0}) {
                rgba.push_back(static_cast<std::uint8_t>(pixel >> shift & 0xFFU));
            }
            rgba.push_back(0xFF);
        }
    }
    return rgba;
}

} // namespace

tl::expected<void, PublishError> make_paper_pdf(const ByteStore& store, const Worksheet& sheet,
                                                const std::string& title, const PaperBlocks& blocks,
                                                const Progress& progress) {
    const auto family = text_family();
    if (!family) {
        return tl::make_unexpected(family.error());
    }
    const PageFormat format = page_format(sheet.paper, sheet.large_print);
    bool stopped = false;
    const auto paint = [&](cairo_t* surface) {
        const Typesetter type(surface, *family);
        const PageSetting page{format, type};
        const int pages = count_pages(page, blocks, stretch_of(progress, 0, 1, 2));
        // A tagged document has one element at its root (PDF 1.7, 14.8.4.2).
        cairo_tag_begin(surface, "Document", nullptr);
        PagePainter painter(surface, page, sheet.code, pages);
        stopped = pages == 0 || !painter.paint(blocks, stretch_of(progress, 1, 2, 2));
        cairo_show_page(surface);
        cairo_tag_end(surface, "Document");
    };
    auto made =
        make_pdf(store, format, {title, "Levers, moment arms and torque", sheet.code}, paint);
    if (made && stopped) {
        return stopped_work();
    }
    return made;
}

tl::expected<std::string, PublishError> paper_pdf(const Worksheet& sheet, const std::string& title,
                                                  const PaperBlocks& blocks,
                                                  const Progress& progress) {
    std::string bytes;
    return make_paper_pdf(store_in(bytes), sheet, title, blocks, progress).map([&] {
        return std::move(bytes);
    });
}

tl::expected<void, PublishError> write_paper_pdf(const std::filesystem::path& path,
                                                 const Worksheet& sheet, const std::string& title,
                                                 const PaperBlocks& blocks,
                                                 const Progress& progress) {
    return write_whole_file(path, [&](std::FILE* file) {
        return make_paper_pdf(store_in(file), sheet, title, blocks, progress);
    });
}

tl::expected<PagePicture, PublishError> page_picture(const Worksheet& sheet,
                                                     const problems::Bank& bank, SheetSide side,
                                                     int page_number, int height_px,
                                                     const Progress& progress) {
    const auto family = text_family();
    if (!family) {
        return tl::make_unexpected(family.error());
    }
    const PageFormat format = page_format(sheet.paper, sheet.large_print);
    const double px_per_pt = height_px / format.height_pt;
    const PictureSize size{static_cast<int>(std::lround(px_per_pt * format.width_pt)), height_px};
    if (auto fault = fault_in(size)) {
        return tl::make_unexpected(std::move(*fault));
    }
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
    if (pages == 0) {
        return stopped_work();
    }
    PagePicture picture{
        size.width_px, size.height_px, {}, std::clamp(page_number, 1, pages), pages};
    PagePainter painter(surface, page, sheet.code, pages);
    painter.paint_only(picture.page);
    if (!painter.paint(blocks, stretch_of(progress, 1, 2, 2))) {
        return stopped_work();
    }
    if (cairo_status(surface) != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(
            PublishError{PublishFault::no_memory, "The page could not be painted."});
    }
    picture.rgba = rgba_of(image.get());
    return picture;
}

} // namespace steelyard::publish
