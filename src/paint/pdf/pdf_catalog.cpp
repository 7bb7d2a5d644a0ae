#include "paint/pdf/pdf_catalog.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace steelyard::paint {
namespace {

/// The whole number after the last place where a word stands; empty when it stands nowhere.
std::optional<std::size_t> number_after_last(const std::string& text, std::string_view word) {
    const std::size_t at = text.rfind(word);
    if (at == std::string::npos) {
        return std::nullopt;
    }
    const char* const digits = text.c_str() + at + word.size();
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

std::string head_of_table(std::size_t size) {
    return fmt::format("xref\n0 {}\n", size);
}

std::optional<Trailer> trailer_of(const ByteStore& document) {
    constexpr std::size_t kTail = 1024; // more than the trailer and what follows it
    const std::size_t bytes = document.size();
    const std::string tail = document.read(bytes - std::min(bytes, kTail), kTail);
    const auto table_at = number_after_last(tail, "startxref");
    const auto size = number_after_last(tail, "/Size");
    const auto root = number_after_last(tail, "/Root");
    const auto info = number_after_last(tail, "/Info");
    if (!table_at || !size || !root || !info) {
        return std::nullopt;
    }
    const std::string head = head_of_table(*size);
    if (document.read(*table_at, head.size()) != head) {
        return std::nullopt;
    }
    return Trailer{*table_at, *size, *root, *info};
}

/// The dictionary of an object, from "<<" to its end, and where it stands.
struct Dictionary {
    std::size_t at = 0;
    std::string text;
};

/// By the cross-reference table, whose entries have 20 bytes each.
std::optional<Dictionary> dictionary_of(const ByteStore& document, const Trailer& trailer,
                                        std::size_t number) {
    constexpr std::size_t kEntry = 20;
    constexpr std::size_t kLongest = 1 << 20; // a title of a page's length is far shorter
    if (number >= trailer.size) {
        return std::nullopt;
    }
    const std::string entry = document.read(
        trailer.table_at + head_of_table(trailer.size).size() + kEntry * number, kEntry);
    const std::size_t at = std::strtoull(entry.c_str(), nullptr, 10);
    const std::string head = fmt::format("{} 0 obj\n<<", number);
    const std::string object = document.read(at, kLongest);
    const std::size_t end = object.find("\nendobj");
    if (object.compare(0, head.size(), head) != 0 || end == std::string::npos) {
        return std::nullopt;
    }
    const std::size_t from = head.size() - 2;
    return Dictionary{at + from, object.substr(from, end - from)};
}

/// Blanks the date out: white space between the entries of a dictionary means nothing.
bool blank_date(const ByteStore& document, const Dictionary& info) {
    const std::size_t from = info.text.rfind("/CreationDate (");
    const std::size_t to = info.text.find(')', from);
    if (from == std::string::npos || to == std::string::npos) {
        return true;
    }
    return document.replace(info.at + from, std::string(to + 1 - from, ' '));
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

bool complete_pdf(const ByteStore& document, std::string_view language) {
    const auto trailer = trailer_of(document);
    if (!trailer) {
        return true;
    }
    const auto catalog = dictionary_of(document, *trailer, trailer->root);
    const auto info = dictionary_of(document, *trailer, trailer->info);
    if (!catalog || !info) {
        return true;
    }
    std::size_t at = document.size();
    std::string update;
    if (document.read(at - 1, 1) != "\n") {
        update = "\n";
        ++at;
    }
    update +=
        fmt::format("{} 0 obj\n{}\nendobj\n", trailer->root, catalog_text(catalog->text, language));
    const std::size_t table_at = document.size() + update.size();
    update += fmt::format("xref\n{} 1\n{:010} 00000 n \n", trailer->root, at);
    update += fmt::format("trailer\n<< /Size {}\n   /Root {} 0 R\n   /Info {} 0 R\n   /Prev {}\n"
                          ">>\nstartxref\n{}\n%%EOF\n",
                          trailer->size, trailer->root, trailer->info, trailer->table_at, table_at);
    return blank_date(document, *info) && document.append(update);
}

std::string completed_pdf(std::string bytes, std::string_view language) {
    complete_pdf(store_in(bytes), language);
    return bytes;
}

} // namespace steelyard::paint
