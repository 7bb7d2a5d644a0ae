#pragma once
// A zip archive that only stores, for where no library compresses.
// Source of the format: PKWARE, APPNOTE.TXT - .ZIP File Format Specification, version 6.3.10,
// sections 4.3.6 to 4.3.16 and 4.4.

#include "publish/exchange/packed_file.h"
#include "publish/files/error.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// The files as the bytes of a zip archive without compression. The same files give the same bytes.
/// @return the bytes, or bad_size for more than 65,535 files or 4 GiB: the format's first edition
///         counts no further
tl::expected<std::string, PublishError> stored_zip(const std::vector<PackedFile>& files);

/// The checksum of bytes in a zip archive: CRC-32, polynomial 0x04C11DB7 read backwards.
/// Source: as above, section 4.4.7.
std::uint32_t crc32_of(std::string_view bytes);

} // namespace steelyard::publish
