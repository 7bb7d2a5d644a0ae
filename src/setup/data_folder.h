#pragma once
// Where files are: those that come with the program, and the person's own.

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

/// Where the person's own files are kept: $XDG_DATA_HOME/steelyard, else
/// ~/.local/share/steelyard; empty when no home is known.
/// Source: XDG Base Directory Specification.
std::filesystem::path own_folder();

} // namespace steelyard::setup
