#pragma once
// A paper set on pages: blocks in order, with a foot on every page that knows how many there are.

#include "publish/error.h"
#include "publish/page_furniture.h"
#include "publish/progress.h"
#include "publish/worksheet.h"

#include <tl/expected.hpp>

#include <functional>
#include <string>

namespace steelyard::publish {

/// The blocks of a paper, made one at a time so that a long paper needs no more memory than a
/// short one.
struct PaperBlocks {
    std::size_t count = 0;
    std::function<Pieces(const PageSetting&, std::size_t index)> make;
};

/// Sets the blocks twice: once to count the pages, once to paint them.
tl::expected<std::string, PublishError> paper_pdf(const Worksheet& sheet, const std::string& title,
                                                  const PaperBlocks& blocks,
                                                  const Progress& progress);

} // namespace steelyard::publish
