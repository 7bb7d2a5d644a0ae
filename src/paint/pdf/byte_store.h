#pragma once
// Where the bytes of a document go while it is made: into memory, or straight to a file, so that a
// long one needs no more memory than a short one.

#include <cstddef>
#include <cstdio>
#include <functional>
#include <string>
#include <string_view>

namespace steelyard::paint {

/// Bytes that grow at the end and can be looked at and changed anywhere.
struct ByteStore {
    std::function<bool(std::string_view bytes)> append; ///< false when they could not be written
    std::function<std::size_t()> size;
    /// So many bytes from a place; fewer where the store ends before.
    std::function<std::string(std::size_t at, std::size_t count)> read;
    /// Replaces bytes that are there; false when they could not be written.
    std::function<bool(std::size_t at, std::string_view bytes)> replace;
};

/// A store in a string, which must outlive it.
ByteStore store_in(std::string& bytes);

/// A store in an empty file that is open to write and read, and must outlive it. What goes wrong is
/// in errno.
ByteStore store_in(std::FILE* file);

} // namespace steelyard::paint
