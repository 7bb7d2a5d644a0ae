#pragma once
// The glossary as a handout among the person's own files.

#include "lesson/glossary.h"
#include "publish/tools.h"

#include <filesystem>
#include <string>
#include <vector>

namespace steelyard::app {

/// Writes the terms with a formula sheet to a new file of a folder: as PDF where that can be made,
/// else as a page that a browser prints.
/// @return a sentence: where it is, or why it is not
std::string print_glossary(const std::vector<lesson::Term>& terms,
                           const std::filesystem::path& folder, const publish::Tools& tools,
                           publish::PaperSize paper);

} // namespace steelyard::app
