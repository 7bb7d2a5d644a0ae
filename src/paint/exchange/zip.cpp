#include "paint/exchange/zip.h"

#include <fmt/format.h>

#include <memory>
#include <zip.h>

namespace steelyard::paint {
using namespace publish;
namespace {

struct Discard {
    void operator()(zip_t* archive) const { zip_discard(archive); }
};
struct FreeSource {
    void operator()(zip_source_t* source) const { zip_source_free(source); }
};
using Archive = std::unique_ptr<zip_t, Discard>;
using Source = std::unique_ptr<zip_source_t, FreeSource>;

tl::unexpected<PublishError> failed(const char* why) {
    return tl::make_unexpected(PublishError{
        PublishFault::no_memory, fmt::format("The package could not be made: {}.", why)});
}

bool add_file(zip_t* archive, const PackedFile& file) {
    zip_source_t* source = zip_source_buffer(archive, file.bytes.data(), file.bytes.size(), 0);
    if (source == nullptr)
        return false;
    const zip_int64_t index = zip_file_add(archive, file.path.c_str(), source, ZIP_FL_ENC_UTF_8);
    if (index < 0) {
        zip_source_free(source);
        return false;
    }
    // One fixed day for all, so that the same files give the same archive: 1 January 2000.
    constexpr zip_uint16_t kDay = (2000 - 1980) << 9 | 1 << 5 | 1;
    return zip_file_set_dostime(archive, static_cast<zip_uint64_t>(index), 0, kDay, 0) == 0;
}

/// The bytes that have been written into a source in memory.
std::string bytes_of(zip_source_t* memory) {
    std::string bytes;
    if (zip_source_open(memory) != 0)
        return bytes;
    constexpr zip_uint64_t kBlock = 1 << 16;
    std::string block(kBlock, '\0');
    for (zip_int64_t n = 0; (n = zip_source_read(memory, block.data(), kBlock)) > 0;)
        bytes.append(block, 0, static_cast<std::size_t>(n));
    zip_source_close(memory);
    return bytes;
}

} // namespace

tl::expected<std::string, PublishError> zip_of(const std::vector<PackedFile>& files) {
    const Source memory(zip_source_buffer_create(nullptr, 0, 0, nullptr));
    if (!memory)
        return failed("out of memory");
    Archive archive(zip_open_from_source(memory.get(), ZIP_CREATE | ZIP_TRUNCATE, nullptr));
    if (!archive)
        return failed("no archive in memory");
    zip_source_keep(memory.get()); // the archive gives its hold back when it closes
    for (const PackedFile& file : files)
        if (!add_file(archive.get(), file))
            return failed(zip_strerror(archive.get()));
    if (zip_close(archive.get()) != 0)
        return failed(zip_strerror(archive.get()));
    (void)archive.release();
    std::string bytes = bytes_of(memory.get());
    return bytes.empty() ? tl::expected<std::string, PublishError>(failed("no bytes came out"))
                         : bytes;
}

} // namespace steelyard::paint
