#include "publish/paper_pdf.h"

#include "publish/pdf.h"
#include "publish/typeface.h"

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
        if (progress && !progress(i + 1, blocks.count)) {
            return 0;
        }
    }
    return flow.pages();
}

class PagePainter {
public:
    PagePainter(cairo_t* surface, const PageSetting& page, std::string code, int pages)
        : surface_(surface), page_(page), code_(std::move(code)), pages_(pages) {}

    void turn(int number) {
        if (number > 1) {
            cairo_show_page(surface_);
        }
        paint_foot(surface_, page_, code_, number, pages_);
    }

    void put(const Pieces& pieces, double top_pt) const {
        cairo_save(surface_);
        cairo_translate(surface_, page_.format.left_pt, page_.format.top_pt + top_pt);
        paint_pieces(surface_, pieces);
        cairo_restore(surface_);
    }

private:
    cairo_t* surface_;
    const PageSetting& page_;
    std::string code_;
    int pages_;
};

} // namespace

tl::expected<std::string, PublishError> paper_pdf(const Worksheet& sheet, const std::string& title,
                                                  const PaperBlocks& blocks,
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
        const int pages = flow_blocks(
            page, blocks, [](int) {}, [](const Pieces&, double) {}, {});
        // A tagged document has one element at its root (PDF 1.7, 14.8.4.2).
        cairo_tag_begin(surface, "Document", nullptr);
        PagePainter painter(surface, page, sheet.code, pages);
        stopped =
            flow_blocks(
                page, blocks, [&](int number) { painter.turn(number); },
                [&](const Pieces& pieces, double top) { painter.put(pieces, top); }, progress) == 0;
        cairo_show_page(surface);
        cairo_tag_end(surface, "Document");
    };
    auto bytes = pdf_of(format, {title, "Levers, moment arms and torque", sheet.code}, paint);
    if (bytes && stopped) {
        return tl::make_unexpected(PublishError{PublishFault::stopped, "Stopped: no paper made."});
    }
    return bytes;
}

} // namespace steelyard::publish
