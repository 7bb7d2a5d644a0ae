#pragma once
// One page of a worksheet or its key, painted.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/page_picture.h"
#include "publish/sheets/worksheet.h"

#include <tl/expected.hpp>

namespace steelyard::paint {

/// Paints one page, set exactly as in the PDF.
/// @param page       from 1; beyond the last one the last is painted
/// @param height_px  of the picture, from 1 to publish::kMaxSide_px
/// @return the picture, or why there is none: a size, no font, or that `progress` said stop
tl::expected<publish::PagePicture, publish::PublishError>
page_picture(const publish::Worksheet& sheet, const problems::Bank& bank, publish::SheetSide side,
             int page, int height_px, const publish::Progress& progress = {});

} // namespace steelyard::paint
