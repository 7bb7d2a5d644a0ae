#pragma once
// One page of a worksheet or its key as pixels, to look at before it is made.

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

} // namespace steelyard::publish
