#pragma once
// Worksheets with their keys, and the same questions for other programs, written to a folder: all
// of them or none.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"
#include "publish/tools.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// What can be made of a sheet. The first two give a sheet and a key, the others one file.
enum class HandoutFormat {
    pdf,
    html,  ///< pages that a browser prints
    qti21, ///< a package for a course site
    qti3,
    csv,   ///< questions and keys
    cards, ///< flash cards
};

/// The bytes of questions in one of the formats for other programs.
/// @param format  not pdf nor html
/// @param title   of the test in a package
tl::expected<std::string, PublishError>
exported_questions(HandoutFormat format, const problems::Bank& bank,
                   const std::vector<problems::Question>& questions, const std::string& title,
                   const Tools& tools, const Progress& progress = {});

/// Writes every sheet in every format, named by its code: "boathouse-42-B.pdf",
/// "boathouse-42-B-key.pdf", "boathouse-42-B-qti21.zip". The folder is made when it is missing.
/// The files are made in a folder within and moved to their names when all are there, so that a
/// failure or a stop leaves none of them.
/// @return where the files are
tl::expected<std::vector<std::filesystem::path>, PublishError>
write_handout(const problems::Bank& bank, const std::vector<Worksheet>& sheets,
              const std::vector<HandoutFormat>& formats, const std::filesystem::path& folder,
              const Tools& tools, const Progress& progress = {});

} // namespace steelyard::publish
