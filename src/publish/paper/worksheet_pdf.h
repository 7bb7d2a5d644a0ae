#pragma once
// Worksheets and their keys as PDF.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>

namespace steelyard::publish {

/// The sheet for learners: questions, drawings, room to work and to answer.
tl::expected<std::string, PublishError> worksheet_pdf(const Worksheet& sheet,
                                                      const Progress& progress = {});

/// The key: all answers at a glance, then each with its worked steps and the wrong answers to
/// watch for.
tl::expected<std::string, PublishError> key_pdf(const Worksheet& sheet, const problems::Bank& bank,
                                                const Progress& progress = {});

/// The same written to files, whole or not at all, page by page: a long sheet takes hardly more
/// memory than a short one.
tl::expected<void, PublishError> write_worksheet_pdf(const std::filesystem::path& path,
                                                     const Worksheet& sheet,
                                                     const Progress& progress = {});
tl::expected<void, PublishError> write_key_pdf(const std::filesystem::path& path,
                                               const Worksheet& sheet, const problems::Bank& bank,
                                               const Progress& progress = {});

} // namespace steelyard::publish
