#include "paint/paper/flow.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace steelyard::paint {
namespace {

const char* pdf_name(Tag tag) {
    switch (tag) {
    case Tag::none:
        return nullptr;
    case Tag::heading_1:
        return "H1";
    case Tag::heading_2:
        return "H2";
    case Tag::paragraph:
        return "P";
    case Tag::figure:
        return "Figure";
    }
    return nullptr;
}

/// Opens and closes elements of the page's structure around pieces.
class Structure {
public:
    explicit Structure(cairo_t* surface) : surface_(surface) {}
    ~Structure() { close(); }
    Structure(const Structure&) = delete;
    Structure& operator=(const Structure&) = delete;

    void before(const Piece& piece) {
        if (piece.continues && open_ != nullptr)
            return;
        close();
        if (piece.label) {
            open(*piece.label);
            paint_at(surface_, *piece.label, 0.0);
            close();
        }
        open(piece);
    }

private:
    void open(const Piece& piece) {
        open_ = pdf_name(piece.tag);
        if (open_ != nullptr)
            cairo_tag_begin(surface_, open_, nullptr);
    }

    void close() {
        if (open_ != nullptr) {
            cairo_tag_end(surface_, open_);
            open_ = nullptr;
        }
    }

    cairo_t* surface_;
    const char* open_ = nullptr;
};

} // namespace

Piece gap(double height_pt) {
    return {height_pt, nullptr, Tag::none, false};
}

double height_of(const Pieces& pieces) {
    double height = 0.0;
    for (const Piece& piece : pieces)
        height += piece.height_pt;
    return height;
}

void paint_at(cairo_t* surface, const Piece& piece, double x, double y) {
    if (piece.paint) {
        cairo_save(surface);
        cairo_translate(surface, x, y);
        piece.paint(surface);
        cairo_restore(surface);
    }
}

void paint_pieces(cairo_t* surface, const Pieces& pieces) {
    Structure structure(surface);
    cairo_save(surface);
    for (const Piece& piece : pieces) {
        if (piece.paint || piece.label) {
            structure.before(piece);
            paint_at(surface, piece, 0.0);
        }
        cairo_translate(surface, 0.0, piece.height_pt);
    }
    cairo_restore(surface);
}

Pieces indented(Pieces pieces, double by_pt) {
    for (Piece& piece : pieces) {
        if (piece.paint) {
            piece.paint = [paint = std::move(piece.paint), by_pt](cairo_t* surface) {
                cairo_translate(surface, by_pt, 0.0);
                paint(surface);
            };
        }
        if (piece.grown) {
            piece.grown = [grown = std::move(piece.grown), by_pt](double height_pt) {
                return indented({grown(height_pt)}, by_pt).front();
            };
        }
    }
    return pieces;
}

Piece side_by_side(Pieces left, Pieces right, double right_starts_pt) {
    const double height = std::max(height_of(left), height_of(right));
    return {height,
            [left = std::move(left), right = std::move(right), right_starts_pt](cairo_t* surface) {
                paint_pieces(surface, left);
                cairo_translate(surface, right_starts_pt, 0.0);
                paint_pieces(surface, right);
            },
            Tag::none, false};
}

void append(Pieces& to, Pieces more) {
    to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

PageFlow::PageFlow(double height_pt, std::function<void(int)> turn,
                   std::function<void(const Pieces&, double)> put)
    : height_pt_(height_pt), turn_(std::move(turn)), put_(std::move(put)) {}

void PageFlow::begin_page() {
    put_page();
    ++page_;
    filled_pt_ = 0.0;
    turn_(page_);
}

void PageFlow::finish() {
    put_page();
}

void PageFlow::put_page() {
    constexpr double kMostGrowth = 1.5; // of a piece's height: more would look forgotten
    std::size_t growing = 0;
    for (const Run& run : held_) {
        growing += static_cast<std::size_t>(
            std::count_if(run.pieces.begin(), run.pieces.end(),
                          [](const Piece& piece) { return static_cast<bool>(piece.grown); }));
    }
    const double each_pt = std::max(0.0, height_pt_ - filled_pt_) /
                           static_cast<double>(std::max<std::size_t>(growing, 1));
    double lower_pt = 0.0;
    for (Run& run : held_) {
        const double top_pt = run.top_pt + lower_pt;
        for (Piece& piece : run.pieces) {
            if (piece.grown) {
                const double more_pt = std::min(each_pt, kMostGrowth * piece.height_pt);
                piece = Piece(piece.grown(piece.height_pt + more_pt));
                lower_pt += more_pt;
            }
        }
        put_(run.pieces, top_pt);
    }
    held_.clear();
}

void PageFlow::add(Pieces block) {
    // A gap at a block's end may hang over the foot of the page.
    double needed = height_of(block);
    if (!block.empty() && !block.back().paint)
        needed -= block.back().height_pt;
    const bool fits_a_page = needed <= height_pt_;
    if (page_ == 0 || (fits_a_page && filled_pt_ + needed > height_pt_))
        begin_page();
    auto from = block.begin();
    while (from != block.end()) {
        double height = 0.0;
        auto to = from;
        while (to != block.end() &&
               (!to->paint || filled_pt_ + height + to->height_pt <= height_pt_ ||
                (to == from && filled_pt_ == 0.0))) {
            height += to->height_pt;
            ++to;
        }
        if (to == from) {
            begin_page();
            continue;
        }
        held_.push_back({Pieces(from, to), filled_pt_});
        filled_pt_ += height;
        from = to;
    }
}

} // namespace steelyard::paint
