#include "setup/toml/input_error.h"

namespace steelyard::setup {
namespace {

constexpr std::size_t kLongestPart = 200;

/// Fit for a line on a terminal: no control characters of a hostile file, no endless key.
std::string tame(const std::string& text) {
    std::string result;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (result.size() >= kLongestPart && (byte & 0xC0) != 0x80)
            return result + "…";
        result += byte < 0x20 || byte == 0x7F ? ' ' : c;
    }
    return result;
}

} // namespace

std::string to_text(const InputError& error) {
    std::string place = error.file;
    const auto add = [&place](const std::string& part) {
        if (!place.empty())
            place += ", ";
        place += tame(part);
    };
    if (error.line > 0)
        add("line " + std::to_string(error.line));
    if (error.column > 0 && error.key.empty())
        add("column " + std::to_string(error.column));
    if (!error.key.empty())
        add(error.key);

    std::string text = place.empty() ? "" : place + ": ";
    if (!error.found.empty())
        text += "found " + tame(error.found);
    if (!error.expected.empty())
        text += (error.found.empty() ? "expected " : ", expected ") + error.expected;
    if (!text.empty() && text.back() != '.')
        text += '.';
    if (!error.mend.empty())
        text += " " + tame(error.mend);
    return text;
}

} // namespace steelyard::setup
