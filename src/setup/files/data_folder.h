#pragma once
// Where files are: those that come with the program, and the person's own.

#include <filesystem>

namespace steelyard::setup {

/// The folder that holds assets/ and question_bank/: `share/steelyard` beside the `bin` that the
/// program runs from. A build tree has a link of that name to the sources, so that one rule serves
/// both and no path is compiled in.
std::filesystem::path data_folder();

/// The same rule for a given program.
/// @param program  full path of the executable, such as `/usr/local/bin/steelyard`
std::filesystem::path data_folder_for(const std::filesystem::path& program);

/// Where the person's own files are kept: $XDG_DATA_HOME/steelyard, else
/// ~/.local/share/steelyard; empty when no home is known.
/// Source: XDG Base Directory Specification.
std::filesystem::path own_folder();

} // namespace steelyard::setup
