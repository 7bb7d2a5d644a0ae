#include "publish/files/written_text.h"

#include <fmt/format.h>

#include <cctype>
#include <cstddef>
#include <cstdint>

namespace steelyard::publish {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD"; // U+FFFD

struct CodePoint {
    std::uint32_t value = 0;
    std::size_t bytes = 1; ///< how far to move on
    bool valid = false;
};

std::uint32_t byte_at(std::string_view text, std::size_t at) {
    return static_cast<unsigned char>(text[at]);
}

/// Number of continuation bytes that a first byte announces; -1 for one that cannot be first.
int continuation_bytes(std::uint32_t first) {
    if (first < 0x80)
        return 0;
    if (first >= 0xC2 && first <= 0xDF)
        return 1;
    if (first >= 0xE0 && first <= 0xEF)
        return 2;
    if (first >= 0xF0 && first <= 0xF4)
        return 3;
    return -1;
}

CodePoint next_code_point(std::string_view text, std::size_t at) {
    const std::uint32_t first = byte_at(text, at);
    const int more = continuation_bytes(first);
    if (more < 0)
        return {};
    // A first byte of n continuation bytes carries 6 - n bits; an ASCII byte all 7.
    std::uint32_t value = more == 0 ? first : first & (0x3FU >> more);
    for (int i = 1; i <= more; ++i) {
        const std::size_t next = at + static_cast<std::size_t>(i);
        if (next >= text.size() || (byte_at(text, next) & 0xC0U) != 0x80U)
            return {value, static_cast<std::size_t>(i), false};
        value = value << 6 | (byte_at(text, next) & 0x3FU);
    }
    constexpr std::uint32_t kShortest[] = {0x0, 0x80, 0x800, 0x10000};
    const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
    const bool valid = value >= kShortest[more] && value <= 0x10FFFF && !surrogate &&
                       value != 0xFFFE && value != 0xFFFF;
    return {value, static_cast<std::size_t>(more) + 1, valid};
}

bool is_control(std::uint32_t value) {
    const bool c0_or_c1 = value < 0x20 || (value >= 0x7F && value <= 0x9F);
    const bool line_end = value == 0x2028 || value == 0x2029;
    return c0_or_c1 || line_end;
}

} // namespace

std::string one_line(std::string_view text) {
    std::string line;
    line.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint point = next_code_point(text, at);
        if (!point.valid)
            line += kReplacement;
        else if (is_control(point.value))
            line += ' ';
        else
            line += text.substr(at, point.bytes);
        at += point.bytes;
    }
    return line;
}

std::string xml_escaped(std::string_view text) {
    std::string escaped;
    escaped.reserve(text.size());
    for (const char c : one_line(text)) {
        switch (c) {
        case '&':
            escaped += "&amp;";
            break;
        case '<':
            escaped += "&lt;";
            break;
        case '>':
            escaped += "&gt;";
            break;
        case '"':
            escaped += "&quot;";
            break;
        case '\'':
            escaped += "&#39;";
            break;
        default:
            escaped += c;
        }
    }
    return escaped;
}

std::string css_string(std::string_view text) {
    std::string safe = "\"";
    for (const char character : one_line(text)) {
        const auto byte = static_cast<unsigned char>(character);
        const bool plain =
            byte >= 0x80 || byte == ' ' || byte == '-' || byte == '.' || std::isalnum(byte) != 0;
        safe += plain ? std::string(1, character) : fmt::format("\\{:x} ", byte);
    }
    return safe + "\"";
}

} // namespace steelyard::publish
