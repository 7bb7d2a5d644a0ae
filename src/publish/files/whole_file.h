#pragma once
// A file is written whole or not at all.

#include "publish/files/error.h"

#include <tl/expected.hpp>

#include <cstdio>
#include <filesystem>
#include <functional>
#include <string_view>

namespace steelyard::publish {

/// Who may read a new file.
enum class Readers {
    as_usual, ///< as the umask says
    owner,    ///< nobody but its owner: mode 0600
};

/// Writes bytes to a file: first under a temporary name in the same folder, then renamed, so that
/// a reader never meets half a file and a failure leaves the old file as it was; what a program
/// that was killed has left of the same file is cleared away. A device or pipe
/// (`/dev/stdout`) is written to directly, for a rename would replace it.
tl::expected<void, PublishError> write_whole_file(const std::filesystem::path& path,
                                                  std::string_view bytes,
                                                  Readers readers = Readers::as_usual);

/// Writes into an open file, which can be read back too.
/// @return an error of fault cannot_write when the file refused (errno says why), or any other
using FileFill = std::function<tl::expected<void, PublishError>(std::FILE*)>;

/// The same for bytes that come one after another.
tl::expected<void, PublishError> write_whole_file(const std::filesystem::path& path,
                                                  const FileFill& fill,
                                                  Readers readers = Readers::as_usual);

} // namespace steelyard::publish
