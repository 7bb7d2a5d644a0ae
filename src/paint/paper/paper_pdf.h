#pragma once
// A paper set on pages: blocks in order, with a foot on every page that knows how many there are.

#include "paint/paper/page_furniture.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <functional>
#include <string>

namespace steelyard::paint {

/// The blocks of a paper, made one at a time so that a long paper needs no more memory than a
/// short one.
struct PaperBlocks {
    std::size_t count = 0;
    std::function<Pieces(const PageSetting&, std::size_t index)> make;
};

/// The bytes of a paper.
tl::expected<std::string, publish::PublishError> paper_pdf(const publish::Worksheet& sheet,
                                                           const std::string& title,
                                                           const PaperBlocks& blocks,
                                                           const publish::Progress& progress);

/// Writes a paper to a file, whole or not at all, without ever holding all of it in memory.
tl::expected<void, publish::PublishError> write_paper_pdf(const std::filesystem::path& path,
                                                          const publish::Worksheet& sheet,
                                                          const std::string& title,
                                                          const PaperBlocks& blocks,
                                                          const publish::Progress& progress);

} // namespace steelyard::paint
