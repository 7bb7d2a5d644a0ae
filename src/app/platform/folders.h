#pragma once
// Where files are that the program writes, in the words of the platform: a desktop has folders that
// a person chooses and names, a browser has its downloads and a storage that shows nobody its
// names.

#include <filesystem>
#include <string>

namespace steelyard::app {

/// True where the person says into which folder files go. Where it is false the browser decides,
/// and several files are given as one package, since it may let only the first one through.
bool has_folders();

/// Where a file is that was written for the person: its path, or its name and that it lies with the
/// browser's downloads. Goes on a sentence, such as "Written: ".
std::string where_given(const std::filesystem::path& file);

/// Where something is that is kept as the person goes: its path, or that it is this browser's.
std::string where_kept(const std::filesystem::path& file);

} // namespace steelyard::app
