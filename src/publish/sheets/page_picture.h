#pragma once
// One page of a worksheet or its key as pixels, to look at before it is made.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <vector>

namespace steelyard::publish {

enum class SheetSide { questions, key };

struct PagePicture {
    int width_px = 0;
    int height_px = 0;
    std::vector<std::uint8_t> rgba; ///< rows from the top, four bytes a pixel, nothing transparent
    int page = 1;                   ///< which it is, from 1
    int pages = 0;                  ///< how many the paper has
};

/// Paints one page, set exactly as in the PDF.
/// @param page       from 1; beyond the last one the last is painted
/// @param height_px  of the picture, from 1 to kMaxSide_px
/// @return the picture, or why there is none: a size, no font, or that `progress` said stop
tl::expected<PagePicture, PublishError> page_picture(const Worksheet& sheet,
                                                     const problems::Bank& bank, SheetSide side,
                                                     int page, int height_px,
                                                     const Progress& progress = {});

} // namespace steelyard::publish
