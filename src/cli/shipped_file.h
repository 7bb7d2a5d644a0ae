#pragma once
// Files that come with the program can be called by their name alone.

#include <filesystem>
#include <string>
#include <string_view>

namespace steelyard::cli {

/// The file that a person named: their own when there is one, else the one of this name that comes
/// with the program, else theirs again, for the reader to complain about.
/// @param folder  within assets/: "setups"
/// @param ending  of such files: ".setup.toml"; may be left out by the person
std::filesystem::path shipped_or_own(const std::string& named, std::string_view folder,
                                     std::string_view ending);

} // namespace steelyard::cli
