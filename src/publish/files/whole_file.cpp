#include "publish/files/whole_file.h"

#include "publish/files/held_file.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <string>
#include <system_error>
#include <utility>

namespace steelyard::publish {
namespace fs = std::filesystem;
namespace {

tl::unexpected<PublishError> refused(const fs::path& path, const char* doing, int error) {
    return tl::make_unexpected(PublishError{
        PublishFault::cannot_write,
        fmt::format("{}: cannot {}: {}. Name a folder that exists, may be written to and has room.",
                    path.string(), doing, std::strerror(error))});
}

/// Fills and closes. What the file refused is told with its name and the system's reason.
tl::expected<void, PublishError> fill_and_close(OpenFile file, const FileFill& fill,
                                                const fs::path& path) {
    errno = 0;
    const auto filled = fill(file.get());
    const bool refused_to_fill = !filled && filled.error().fault == PublishFault::cannot_write;
    const bool flushed = filled && std::fflush(file.get()) == 0 && std::ferror(file.get()) == 0;
    const int write_error = errno;
    // A full disk may show only when the file is closed.
    const bool closed = std::fclose(file.release()) == 0;
    if (filled && flushed && closed)
        return {};
    if (!filled && !refused_to_fill)
        return filled;
    return refused(path, "write it", flushed ? errno : write_error);
}

FileFill filling_with(std::string_view bytes) {
    return [bytes](std::FILE* file) -> tl::expected<void, PublishError> {
        if (std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size())
            return {};
        return tl::make_unexpected(PublishError{PublishFault::cannot_write, ""});
    };
}

/// A name in the same folder that nothing has yet, or that a killed program has left behind.
std::pair<OpenFile, fs::path> open_beside(const fs::path& path) {
    constexpr int kTries = 100;
    std::error_code ignored;
    for (int i = 0; i < kTries; ++i) {
        const fs::path beside =
            path.parent_path() / fmt::format(".{}.part{}", path.filename().string(), i);
        if (is_left_behind(beside))
            fs::remove(beside, ignored);
        if (OpenFile file = make_held_file(beside))
            return {std::move(file), beside};
        if (errno != EEXIST)
            break;
    }
    return {OpenFile{}, fs::path{}};
}

/// A device cannot be read back, nor gone back in: it gets a copy.
tl::expected<void, PublishError> write_in_place(const fs::path& path, const FileFill& fill) {
    const OpenFile copy{std::tmpfile()};
    if (!copy)
        return refused(path, "make a temporary file for it", errno);
    if (auto filled = fill(copy.get()); !filled) {
        if (filled.error().fault == PublishFault::cannot_write)
            return refused(path, "write a temporary copy of it", errno);
        return filled;
    }
    OpenFile file{std::fopen(path.string().c_str(), "wb")};
    if (!file)
        return refused(path, "open it", errno);
    const auto copy_over = [&](std::FILE* to) -> tl::expected<void, PublishError> {
        std::rewind(copy.get());
        std::string block(1 << 16, '\0');
        for (std::size_t n = 0; (n = std::fread(block.data(), 1, block.size(), copy.get())) > 0;)
            if (std::fwrite(block.data(), 1, n, to) != n)
                return tl::make_unexpected(PublishError{PublishFault::cannot_write, ""});
        return {};
    };
    return fill_and_close(std::move(file), copy_over, path);
}

} // namespace

tl::expected<void, PublishError> write_whole_file(const fs::path& path, std::string_view bytes,
                                                  Readers readers) {
    return write_whole_file(path, filling_with(bytes), readers);
}

tl::expected<void, PublishError> write_whole_file(const fs::path& path, const FileFill& fill,
                                                  Readers readers) {
    std::error_code ignored;
    const fs::file_status there = fs::status(path, ignored);
    if (fs::is_directory(there))
        return refused(path, "write a file here", EISDIR);
    if (fs::exists(there) && !fs::is_regular_file(there))
        return write_in_place(path, fill);
    // Through a link, so that the rename replaces the file and not the link.
    const fs::path target = fs::exists(there) ? fs::canonical(path, ignored) : path;
    auto [file, beside] = open_beside(target);
    if (!file)
        return refused(path, "create it", errno);
    if (readers == Readers::owner)
        fs::permissions(beside, fs::perms::owner_read | fs::perms::owner_write, ignored);
    if (auto filled = fill_and_close(std::move(file), fill, path); !filled) {
        fs::remove(beside, ignored);
        return filled;
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
