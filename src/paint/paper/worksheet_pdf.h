#pragma once
// Worksheets and their keys as PDF.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/page_picture.h"
#include "publish/sheets/worksheet.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>

namespace steelyard::paint {

/// The sheet for learners: questions, drawings, room to work and to answer.
tl::expected<std::string, publish::PublishError>
worksheet_pdf(const publish::Worksheet& sheet, const publish::Progress& progress = {});

/// The key: all answers at a glance, then each with its worked steps and the wrong answers to
/// watch for.
tl::expected<std::string, publish::PublishError> key_pdf(const publish::Worksheet& sheet,
                                                         const problems::Bank& bank,
                                                         const publish::Progress& progress = {});

/// The sheet or its key written to a file, whole or not at all, page by page: a long sheet takes
/// hardly more memory than a short one.
tl::expected<void, publish::PublishError> write_sheet_pdf(const std::filesystem::path& path,
                                                          const publish::Worksheet& sheet,
                                                          const problems::Bank& bank,
                                                          publish::SheetSide side,
                                                          const publish::Progress& progress = {});

} // namespace steelyard::paint
