#include "publish/whole_file.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <optional>
#include <system_error>
#include <utility>

namespace steelyard::publish {
namespace fs = std::filesystem;
namespace {

struct Closer {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, Closer>;

tl::unexpected<PublishError> refused(const fs::path& path, const char* doing, int error) {
    return tl::make_unexpected(PublishError{
        PublishFault::cannot_write,
        fmt::format("{}: cannot {}: {}. Name a folder that exists, may be written to and has room.",
                    path.string(), doing, std::strerror(error))});
}

/// Writes and closes; empty when all bytes have reached the file, else the system's error number.
std::optional<int> fill(File file, std::string_view bytes) {
    const bool written = std::fwrite(bytes.data(), 1, bytes.size(), file.get()) == bytes.size() &&
                         std::fflush(file.get()) == 0;
    const int write_error = errno;
    // A full disk may show only when the file is closed.
    const bool closed = std::fclose(file.release()) == 0;
    if (!written) {
        return write_error;
    }
    return closed ? std::nullopt : std::optional<int>(errno);
}

/// A name in the same folder that nothing has yet.
std::pair<File, fs::path> open_beside(const fs::path& path) {
    constexpr int kTries = 100;
    for (int i = 0; i < kTries; ++i) {
        fs::path beside = path;
        beside += fmt::format(".part{}", i);
        if (File file{std::fopen(beside.string().c_str(), "wbx")}) {
            return {std::move(file), beside};
        }
        if (errno != EEXIST) {
            break;
        }
    }
    return {File{}, fs::path{}};
}

tl::expected<void, PublishError> write_in_place(const fs::path& path, std::string_view bytes) {
    File file{std::fopen(path.string().c_str(), "wb")};
    if (!file) {
        return refused(path, "open it", errno);
    }
    if (const auto error = fill(std::move(file), bytes)) {
        return refused(path, "write it", *error);
    }
    return {};
}

} // namespace

tl::expected<void, PublishError> write_whole_file(const fs::path& path, std::string_view bytes) {
    std::error_code ignored;
    const fs::file_status there = fs::status(path, ignored);
    if (fs::is_directory(there)) {
        return refused(path, "write a file here", EISDIR);
    }
    if (fs::exists(there) && !fs::is_regular_file(there)) {
        return write_in_place(path, bytes);
    }
    // Through a link, so that the rename replaces the file and not the link.
    const fs::path target = fs::exists(there) ? fs::canonical(path, ignored) : path;
    auto [file, beside] = open_beside(target);
    if (!file) {
        return refused(path, "create it", errno);
    }
    if (const auto error = fill(std::move(file), bytes)) {
        fs::remove(beside, ignored);
        return refused(path, "write it", *error);
    }
    std::error_code failed;
    fs::rename(beside, target, failed);
    if (failed) {
        fs::remove(beside, ignored);
        return refused(path, "give it its name", failed.value());
    }
    return {};
}

} // namespace steelyard::publish
