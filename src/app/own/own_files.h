#pragma once
// Names of the files in which the person keeps what they made.

#include <filesystem>
#include <string>
#include <string_view>

namespace steelyard::app {

/// A folder of setup::own_folder; empty when no home is known.
std::filesystem::path own_folder_of(std::string_view what);

/// What a file is called after a title: its letters and digits, small, with dashes between the
/// words.
/// @param otherwise  where the title has neither letters nor digits of the Latin alphabet
std::string file_stem(std::string_view title, std::string_view otherwise);

/// A file for something new with this title: the letters and digits of the title, and a number if
/// there is one of that name already. Empty when the folder is.
/// @param otherwise  as for file_stem
std::filesystem::path free_path(const std::filesystem::path& folder, std::string_view title,
                                std::string_view ending, std::string_view otherwise);

} // namespace steelyard::app
