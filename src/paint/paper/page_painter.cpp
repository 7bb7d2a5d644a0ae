#include "paint/paper/page_painter.h"

#include <functional>

namespace steelyard::paint {
using namespace publish;
namespace {

/// Lays out every block and tells where each run of pieces belongs.
/// @return the number of pages, or 0 when `progress` said stop
int flow_blocks(const PageSetting& page, const PaperBlocks& blocks,
                const std::function<void(int)>& turn,
                const std::function<void(const Pieces&, double)>& put, const Progress& progress) {
    PageFlow flow(page.format.content_height_pt(), turn, put);
    for (std::size_t i = 0; i < blocks.count; ++i) {
        flow.add(blocks.make(page, i));
        if (!goes_on(progress, i + 1, blocks.count))
            return 0;
    }
    flow.finish();
    return flow.pages();
}

} // namespace

int count_pages(const PageSetting& page, const PaperBlocks& blocks, const Progress& progress) {
    return flow_blocks(
        page, blocks, [](int) {}, [](const Pieces&, double) {}, progress);
}

bool PagePainter::paint(const PaperBlocks& blocks, const Progress& progress) {
    return flow_blocks(
               page_, blocks, [&](int number) { turn(number); },
               [&](const Pieces& pieces, double top) { put(pieces, top); }, progress) != 0;
}

void PagePainter::turn(int number) {
    number_ = number;
    if (number > 1 && only_ == 0)
        cairo_show_page(surface_);
    if (is_painted())
        paint_foot(surface_, page_, code_, number, pages_);
}

void PagePainter::put(const Pieces& pieces, double top_pt) const {
    if (!is_painted())
        return;
    cairo_save(surface_);
    cairo_translate(surface_, page_.format.left_pt, page_.format.top_pt + top_pt);
    paint_pieces(surface_, pieces);
    cairo_restore(surface_);
}

} // namespace steelyard::paint
