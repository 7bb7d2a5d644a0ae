#pragma once
// The files of a folder.

#include "setup/toml/input_error.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// Files of a folder whose names end so, sorted by name; or why the folder cannot be read.
tl::expected<std::vector<std::filesystem::path>, InputError>
files_ending(const std::filesystem::path& folder, std::string_view ending);

} // namespace steelyard::setup
