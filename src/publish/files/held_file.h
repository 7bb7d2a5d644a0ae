#pragma once
// A file that is held by the program that makes it, until it closes it or ends in whatever way, so
// that another can tell what a killed one has left behind from what is being written.

#include <cstdio>
#include <filesystem>
#include <memory>

namespace steelyard::publish {

struct FileCloser {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using OpenFile = std::unique_ptr<std::FILE, FileCloser>;

/// Makes a file under a name that nothing has yet, open for writing and reading back, and holds it.
/// @return null where it cannot be made; errno says why, EEXIST where the name is taken
OpenFile make_held_file(const std::filesystem::path& path);

/// Whether a file was left behind: nobody holds it, and it is older than the moment that lies
/// between making and holding one. False where there is none.
bool is_left_behind(const std::filesystem::path& path);

} // namespace steelyard::publish
