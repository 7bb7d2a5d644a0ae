#include "publish/files/written_text.h"

#include "setup/toml/letters.h"

#include <fmt/format.h>

#include <cctype>

namespace steelyard::publish {

std::string one_line(std::string_view text) {
    return setup::one_line(text);
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
