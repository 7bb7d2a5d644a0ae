#pragma once
// The blocks of a paper on their pages: counted, then painted, all of them or a single one.

#include "paint/paper/page_furniture.h"
#include "paint/paper/paper_pdf.h"
#include "publish/files/progress.h"

#include <cairo.h>

#include <string>

namespace steelyard::paint {

/// Number of pages that the blocks take, or 0 when `progress` said stop.
int count_pages(const PageSetting& page, const PaperBlocks& blocks,
                const publish::Progress& progress);

/// Paints pages one after another, or a single one of them.
class PagePainter {
public:
    /// @param surface  its frame's origin is the page's top left corner
    /// @param code     for the foot
    /// @param pages    how many there are, from count_pages
    PagePainter(cairo_t* surface, const PageSetting& page, std::string code, int pages)
        : surface_(surface), page_(page), code_(std::move(code)), pages_(pages) {}

    /// Only the page of this number, from 1, is painted.
    void paint_only(int number) { only_ = number; }

    /// @return false when `progress` said stop
    bool paint(const PaperBlocks& blocks, const publish::Progress& progress);

private:
    void turn(int number);
    void put(const Pieces& pieces, double top_pt) const;
    bool is_painted() const { return only_ == 0 || only_ == number_; }

    cairo_t* surface_;
    const PageSetting& page_;
    std::string code_;
    int pages_;
    int only_ = 0; ///< 0 = all
    int number_ = 0;
};

} // namespace steelyard::paint
