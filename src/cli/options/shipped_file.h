#pragma once
// Files that come with the program, and those in the person's own folder, can be called by their
// name alone.

#include <filesystem>
#include <string>
#include <string_view>

namespace steelyard::cli {

/// The file that a person named: the one at this path when there is one, else the one of this name
/// in their own folder or that comes with the program, else the path again, for the reader to
/// complain about.
/// @param folder  within setup::own_folder and assets/: "setups"
/// @param ending  of such files: ".setup.toml"; may be left out by the person
std::filesystem::path shipped_or_own(const std::string& named, std::string_view folder,
                                     std::string_view ending);

/// The name of the shipped file, or of the person's own, that a mistyped name is nearest to; empty
/// when none is near.
std::string nearest_shipped(const std::string& named, std::string_view folder,
                            std::string_view ending);

} // namespace steelyard::cli
