#include "publish/pdf_catalog.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace steelyard::publish {
namespace {

/// A part of a document: from, to.
struct Span {
    std::size_t from = 0;
    std::size_t to = 0;
};

/// The whole number after the last place where a word stands; empty when it stands nowhere.
std::optional<std::size_t> number_after_last(const std::string& bytes, std::string_view word) {
    const std::size_t at = bytes.rfind(word);
    if (at == std::string::npos) {
        return std::nullopt;
    }
    const char* const digits = bytes.c_str() + at + word.size();
    char* end = nullptr;
    const auto number = std::strtoull(digits, &end, 10);
    return end == digits ? std::nullopt : std::optional<std::size_t>(number);
}

/// What Cairo's trailer says.
struct Trailer {
    std::size_t table_at = 0; ///< of the cross-reference table
    std::size_t size = 0;     ///< number of objects, the free one at 0 included
    std::size_t root = 0;     ///< number of the catalog
    std::size_t info = 0;     ///< number of the document information
};

std::optional<Trailer> trailer_of(const std::string& bytes) {
    const auto table_at = number_after_last(bytes, "startxref");
    const auto size = number_after_last(bytes, "/Size");
    const auto root = number_after_last(bytes, "/Root");
    const auto info = number_after_last(bytes, "/Info");
    if (!table_at || !size || !root || !info) {
        return std::nullopt;
    }
    const std::string head = fmt::format("xref\n0 {}\n", *size);
    if (bytes.compare(*table_at, head.size(), head) != 0 || *table_at > bytes.size()) {
        return std::nullopt;
    }
    return Trailer{*table_at, *size, *root, *info};
}

/// The dictionary of an object, from "<<" to its end, by the cross-reference table, whose entries
/// have 20 bytes each.
std::optional<Span> dictionary_of(const std::string& bytes, const Trailer& trailer,
                                  std::size_t number) {
    constexpr std::size_t kEntry = 20;
    const std::size_t entry =
        trailer.table_at + fmt::format("xref\n0 {}\n", trailer.size).size() + kEntry * number;
    if (number >= trailer.size || entry + kEntry > bytes.size()) {
        return std::nullopt;
    }
    const std::size_t at = std::strtoull(bytes.c_str() + entry, nullptr, 10);
    const std::string head = fmt::format("{} 0 obj\n<<", number);
    if (at >= bytes.size() || bytes.compare(at, head.size(), head) != 0) {
        return std::nullopt;
    }
    const std::size_t end = bytes.find("\nendobj", at);
    return end == std::string::npos ? std::nullopt : std::optional(Span{at + head.size() - 2, end});
}

/// Blanks the date out: white space between the entries of a dictionary means nothing.
void blank_date(std::string& bytes, const Span& info) {
    constexpr std::string_view kDate = "/CreationDate (";
    const std::size_t from = bytes.rfind(kDate, info.to);
    if (from == std::string::npos || from < info.from) {
        return;
    }
    const std::size_t to = bytes.find(')', from);
    if (to < info.to) {
        std::fill(bytes.begin() + static_cast<std::ptrdiff_t>(from),
                  bytes.begin() + static_cast<std::ptrdiff_t>(to) + 1, ' ');
    }
}

/// The catalog's dictionary with our entries.
std::string catalog_text(std::string dictionary, std::string_view language) {
    const bool tagged = dictionary.find("/StructTreeRoot") != std::string::npos;
    const auto add = [&](std::string_view key, const std::string& value) {
        if (dictionary.find(key) == std::string::npos) {
            dictionary.insert(dictionary.rfind(">>"), fmt::format("   {} {}\n", key, value));
        }
    };
    add("/Lang", fmt::format("({})", language));
    add("/ViewerPreferences", "<< /DisplayDocTitle true >>");
    if (tagged) {
        add("/MarkInfo", "<< /Marked true >>");
    }
    return dictionary;
}

} // namespace

std::string completed_pdf(std::string bytes, std::string_view language) {
    const auto trailer = trailer_of(bytes);
    if (!trailer) {
        return bytes;
    }
    const auto catalog = dictionary_of(bytes, *trailer, trailer->root);
    const auto info = dictionary_of(bytes, *trailer, trailer->info);
    if (!catalog || !info) {
        return bytes;
    }
    blank_date(bytes, *info);
    const std::string dictionary =
        catalog_text(bytes.substr(catalog->from, catalog->to - catalog->from), language);
    if (bytes.back() != '\n') {
        bytes += '\n';
    }
    const std::size_t at = bytes.size();
    bytes += fmt::format("{} 0 obj\n{}\nendobj\n", trailer->root, dictionary);
    const std::size_t table_at = bytes.size();
    bytes += fmt::format("xref\n{} 1\n{:010} 00000 n \n", trailer->root, at);
    bytes += fmt::format("trailer\n<< /Size {}\n   /Root {} 0 R\n   /Info {} 0 R\n   /Prev {}\n>>\n"
                         "startxref\n{}\n%%EOF\n",
                         trailer->size, trailer->root, trailer->info, trailer->table_at, table_at);
    return bytes;
}

} // namespace steelyard::publish
