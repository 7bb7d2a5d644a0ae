#include "publish/files/held_file.h"

#include <chrono>
#include <sys/file.h>
#include <system_error>

namespace steelyard::publish {

namespace fs = std::filesystem;

namespace {

/// Without waiting. @return false where another program holds it
bool hold(std::FILE* file) {
    return flock(fileno(file), LOCK_EX | LOCK_NB) == 0;
}

} // namespace

OpenFile make_held_file(const fs::path& path) {
    OpenFile file{std::fopen(path.string().c_str(), "w+bx")};
    if (file)
        hold(file.get());
    return file;
}

bool is_left_behind(const fs::path& path) {
    constexpr std::chrono::seconds kMoment{10};
    std::error_code failed;
    if (!fs::is_regular_file(fs::symlink_status(path, failed)))
        return false;
    const auto written = fs::last_write_time(path, failed);
    if (failed || fs::file_time_type::clock::now() - written < kMoment)
        return false;
    const OpenFile file{std::fopen(path.string().c_str(), "rb")};
    return file && hold(file.get());
}

} // namespace steelyard::publish
