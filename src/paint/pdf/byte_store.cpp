#include "paint/pdf/byte_store.h"

#include <algorithm>

namespace steelyard::paint {
namespace {

bool go_to(std::FILE* file, std::size_t at) {
    return std::fseek(file, static_cast<long>(at), SEEK_SET) == 0;
}

bool go_to_end(std::FILE* file) {
    return std::fseek(file, 0, SEEK_END) == 0;
}

bool write_here(std::FILE* file, std::string_view bytes) {
    return std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
}

} // namespace

ByteStore store_in(std::string& bytes) {
    return {[&bytes](std::string_view more) {
                bytes.append(more);
                return true;
            },
            [&bytes] { return bytes.size(); },
            [&bytes](std::size_t at, std::size_t count) {
                return at < bytes.size() ? bytes.substr(at, count) : std::string();
            },
            [&bytes](std::size_t at, std::string_view others) {
                bytes.replace(at, others.size(), others);
                return true;
            }};
}

ByteStore store_in(std::FILE* file) {
    return {[file](std::string_view more) { return write_here(file, more); },
            [file] {
                const long end = go_to_end(file) ? std::ftell(file) : 0;
                return static_cast<std::size_t>(std::max(end, 0L));
            },
            [file](std::size_t at, std::size_t count) {
                std::string bytes(count, '\0');
                const bool there = go_to(file, at);
                bytes.resize(there ? std::fread(bytes.data(), 1, count, file) : 0);
                go_to_end(file); // where the next bytes are appended
                return bytes;
            },
            [file](std::size_t at, std::string_view others) {
                return go_to(file, at) && write_here(file, others) && go_to_end(file);
            }};
}

} // namespace steelyard::paint
