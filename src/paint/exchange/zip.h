#pragma once
// A zip archive that compresses.

#include "publish/exchange/packed_file.h"
#include "publish/files/error.h"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace steelyard::paint {

/// The files as the bytes of a zip archive. The same files give the same bytes.
tl::expected<std::string, publish::PublishError>
zip_of(const std::vector<publish::PackedFile>& files);

} // namespace steelyard::paint
