#pragma once
// A file is written whole or not at all.

#include "publish/error.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string_view>

namespace steelyard::publish {

/// Writes bytes to a file: first under a temporary name in the same folder, then renamed, so that
/// a reader never meets half a file and a failure leaves the old file as it was. A device or pipe
/// (`/dev/stdout`) is written to directly, for a rename would replace it.
tl::expected<void, PublishError> write_whole_file(const std::filesystem::path& path,
                                                  std::string_view bytes);

} // namespace steelyard::publish
