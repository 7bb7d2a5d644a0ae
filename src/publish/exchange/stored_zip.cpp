#include "publish/exchange/stored_zip.h"

#include <fmt/format.h>

#include <array>
#include <limits>

namespace steelyard::publish {
namespace {

/// Numbers of an archive stand with their lowest byte first, whatever the machine does.
void add_16(std::string& to, std::uint32_t number) {
    to += static_cast<char>(number & 0xFFU);
    to += static_cast<char>(number >> 8 & 0xFFU);
}

void add_32(std::string& to, std::size_t number) {
    add_16(to, static_cast<std::uint32_t>(number & 0xFFFFU));
    add_16(to, static_cast<std::uint32_t>(number >> 16 & 0xFFFFU));
}

std::array<std::uint32_t, 256> crc_table() {
    std::array<std::uint32_t, 256> table{};
    for (std::uint32_t i = 0; i < table.size(); ++i) {
        std::uint32_t crc = i;
        for (int bit = 0; bit < 8; ++bit)
            crc = (crc >> 1) ^ ((crc & 1U) != 0 ? 0xEDB88320U : 0U);
        table[i] = crc;
    }
    return table;
}

/// What the head of a file and its line in the directory say alike (section 4.4).
std::string description_of(const PackedFile& file) {
    constexpr std::uint32_t kVersion = 20;           // 2.0: folders in names
    constexpr std::uint32_t kNamesAreUtf8 = 1 << 11; // general purpose bit 11
    constexpr std::uint32_t kStored = 0;
    // One fixed day for all, so that the same files give the same archive: 1 January 2000.
    constexpr std::uint32_t kDay = (2000 - 1980) << 9 | 1 << 5 | 1;
    std::string text;
    add_16(text, kVersion);
    add_16(text, kNamesAreUtf8);
    add_16(text, kStored);
    add_16(text, 0); // midnight
    add_16(text, kDay);
    add_32(text, crc32_of(file.bytes));
    add_32(text, file.bytes.size()); // compressed
    add_32(text, file.bytes.size());
    add_16(text, static_cast<std::uint32_t>(file.path.size()));
    add_16(text, 0); // no extra field
    return text;
}

} // namespace

std::uint32_t crc32_of(std::string_view bytes) {
    static const std::array<std::uint32_t, 256> kTable = crc_table();
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const char byte : bytes)
        crc = kTable[(crc ^ static_cast<unsigned char>(byte)) & 0xFFU] ^ (crc >> 8);
    return crc ^ 0xFFFFFFFFU;
}

tl::expected<std::string, PublishError> stored_zip(const std::vector<PackedFile>& files) {
    std::string archive;
    std::string directory;
    for (const PackedFile& file : files) {
        const std::string description = description_of(file);
        directory += "PK\x01\x02";
        add_16(directory, 20); // made by version 2.0, attributes as in DOS
        directory += description;
        directory.append(10, '\0'); // no comment, first disk, no attributes within or without
        add_32(directory, archive.size());
        directory += file.path;
        archive += "PK\x03\x04";
        archive += description + file.path + file.bytes;
    }
    constexpr std::size_t kMostFiles = std::numeric_limits<std::uint16_t>::max();
    constexpr std::size_t kMostBytes = std::numeric_limits<std::uint32_t>::max();
    if (files.size() > kMostFiles || archive.size() > kMostBytes - directory.size()) {
        return tl::make_unexpected(
            PublishError{PublishFault::bad_size,
                         fmt::format("A package of {} files is too large: make several of fewer "
                                     "questions.",
                                     files.size())});
    }
    std::string end = "PK\x05\x06";
    end.append(4, '\0'); // this disk, which is the first
    add_16(end, static_cast<std::uint32_t>(files.size()));
    add_16(end, static_cast<std::uint32_t>(files.size()));
    add_32(end, directory.size());
    add_32(end, archive.size());
    add_16(end, 0); // no comment
    return archive + directory + end;
}

} // namespace steelyard::publish
