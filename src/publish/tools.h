#pragma once
// What takes a library to make: pixels, PDF, compressed bytes. This layer writes text alone, so
// whoever starts the program lends it these as values. One that is absent says why and what to do
// instead, and everything else works without it.

#include "problems/bank/bank.h"
#include "publish/exchange/stored_zip.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/pictures/moving_picture.h"
#include "publish/pictures/picture_size.h"
#include "publish/sheets/page_picture.h"
#include "publish/sheets/term_list.h"
#include "publish/sheets/worksheet.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <functional>
#include <string>
#include <utility>

namespace steelyard::publish {

/// A function that may be absent.
template <typename Made, typename... Given> class Lent {
public:
    using Result = tl::expected<Made, PublishError>;
    using Work = std::function<Result(Given...)>;

    /// Absent.
    /// @param why_not  a sentence that says what to do instead
    explicit Lent(std::string why_not) : why_not_(std::move(why_not)) {}

    void lend(Work work) { work_ = std::move(work); }
    bool is_there() const { return static_cast<bool>(work_); }
    const std::string& why_not() const { return why_not_; }

    /// What the function makes; where it is absent, no_tool and why.
    Result operator()(Given... given) const {
        if (!work_)
            return tl::make_unexpected(PublishError{PublishFault::no_tool, why_not_});
        return work_(given...);
    }

private:
    Work work_;
    std::string why_not_;
};

struct Tools {
    /// One page of a sheet or its key, set exactly as in the PDF. The page counts from 1, and
    /// beyond the last one the last is painted; the height [px] is that of the picture.
    Lent<PagePicture, const Worksheet&, const problems::Bank&, SheetSide, int, int, const Progress&>
        page_picture{"Pages cannot be shown here: this edition of Steelyard sets no type. Make the "
                     "page for a browser and print it from there."};

    /// Writes a sheet or its key as PDF, whole or not at all.
    Lent<void, const std::filesystem::path&, const Worksheet&, const problems::Bank&, SheetSide,
         const Progress&>
        paper_pdf{"This edition of Steelyard makes no PDF. Make the page for a browser and print "
                  "it from there."};

    /// The bytes of a glossary with a formula sheet as PDF.
    Lent<std::string, const TermList&> term_list_pdf{
        "This edition of Steelyard makes no PDF. Make the page for a browser and print it from "
        "there."};

    /// The bytes of a drawing as PNG of the size, or as PDF that shows it in that size.
    Lent<std::string, const scene::Drawing&, scene::Look, PictureSize> png{
        "This edition of Steelyard makes no PNG. Take SVG."};
    Lent<std::string, const scene::Drawing&, scene::Look, PictureSize> picture_pdf{
        "This edition of Steelyard makes no PDF. Take SVG."};

    /// The bytes of a moving picture as GIF that begins again at its end.
    Lent<std::string, const MovingPicture&, scene::Look, PictureSize, const Progress&> gif{
        "This edition of Steelyard makes no moving picture. Take a still one, as SVG."};

    /// The bytes of a package; stored as they are where nothing compresses.
    std::function<tl::expected<std::string, PublishError>(const std::vector<PackedFile>&)> zip =
        stored_zip;
};

} // namespace steelyard::publish
