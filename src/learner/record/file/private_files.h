#pragma once
// What is kept of a learner is for the eyes of whoever runs the program, whatever the umask says:
// folders 0700, files 0600.

#include <filesystem>
#include <system_error>

namespace steelyard::learner {

/// Makes a folder and those above it that are missing, for the owner alone.
/// Source: XDG Base Directory Specification, "Referencing this specification" (mode 0700).
std::error_code make_private_folder(const std::filesystem::path& folder);

/// Makes an empty file where none is, and takes from others what rights they have. Says nothing
/// when it cannot: opening the file tells more.
void make_private_file(const std::filesystem::path& file);

/// Takes from others what rights they have to the files of a record, and to its folder when it
/// holds nothing else, so that no shared folder is shut.
void close_to_others(const std::filesystem::path& folder);

} // namespace steelyard::learner
