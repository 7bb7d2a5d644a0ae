#pragma once
// What stands on pages, from top to bottom: pieces that cannot be broken, in blocks that are kept
// on one page where they fit on one.

#include <cairo.h>

#include <functional>
#include <memory>
#include <vector>

namespace steelyard::paint {

/// Structure of a piece for those who have the page read to them.
/// Source of the names: PDF 1.7 (ISO 32000-1:2008), section 14.8.4, standard structure types.
enum class Tag { none, heading_1, heading_2, paragraph, figure };

/// Something of a height that paints itself with its top left corner at the frame's origin.
struct Piece {
    double height_pt = 0.0;
    std::function<void(cairo_t*)> paint;
    Tag tag = Tag::none;
    /// Continues the paragraph of the piece before: one element of the page's structure.
    bool continues = false;
    /// The same piece in another height [pt]; empty for one that has a height of its own.
    std::function<Piece(double)> grown = nullptr;
    /// Stands in the margin beside it, such as its number: an element of its own that is read
    /// before it, painted in the same frame.
    std::shared_ptr<const Piece> label = nullptr;
};

using Pieces = std::vector<Piece>;

/// A piece of white space.
Piece gap(double height_pt);

/// Sum of heights.
double height_of(const Pieces& pieces);

/// Paints a piece with its top left corner at a place of the present frame, which stays as it is.
void paint_at(cairo_t* surface, const Piece& piece, double x, double y = 0.0);

/// Paints pieces below each other, the first at the frame's origin.
void paint_pieces(cairo_t* surface, const Pieces& pieces);

/// The same pieces, each moved to the right.
Pieces indented(Pieces pieces, double by_pt);

/// Two columns as one piece that cannot be broken.
Piece side_by_side(Pieces left, Pieces right, double right_starts_pt);

/// Appends.
void append(Pieces& to, Pieces more);

/// Which pieces stand on which page. What is left of a page goes to its pieces that can grow.
class PageFlow {
public:
    /// @param height_pt  room for pieces on a page
    /// @param turn       called before each page is begun, with its number from 1
    /// @param put        called for each run of pieces on a page when the page is full, with the
    ///                   distance of its top from the top of the page's room
    PageFlow(double height_pt, std::function<void(int)> turn,
             std::function<void(const Pieces&, double)> put);

    /// Places a block on the present page; on the next when it does not fit any more; across
    /// pages, between pieces, when it is longer than a page.
    void add(Pieces block);

    /// Ends the last page; without it nothing of that page is put.
    void finish();

    /// Number of pages begun.
    int pages() const { return page_; }

private:
    /// Pieces that wait until their page is full.
    struct Run {
        Pieces pieces;
        double top_pt;
    };
    void begin_page();
    void put_page();

    double height_pt_;
    std::function<void(int)> turn_;
    std::function<void(const Pieces&, double)> put_;
    int page_ = 0;
    double filled_pt_ = 0.0;
    std::vector<Run> held_; ///< of the present page
};

} // namespace steelyard::paint
