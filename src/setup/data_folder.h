#pragma once
// Where the files that come with the program are: assets/ and question_bank/.

#include <filesystem>
#include <optional>

namespace steelyard::setup {

/// The folder that holds assets/ and question_bank/: `share/steelyard` of the prefix in which the
/// program is installed, else the source tree that it was built from.
std::filesystem::path data_folder();

/// The same rule for a given program and source tree; an unknown program (empty) has no prefix.
/// @param program  full path of the running executable, such as `/usr/local/bin/steelyard`
std::filesystem::path data_folder_for(const std::optional<std::filesystem::path>& program,
                                      const std::filesystem::path& source_tree);

} // namespace steelyard::setup
