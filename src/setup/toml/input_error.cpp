#include "setup/toml/input_error.h"

#include "setup/toml/letters.h"

namespace steelyard::setup {
namespace {

/// Fit for a line on a terminal: no control characters of a hostile file, no endless key.
std::string tame(const std::string& text) {
    constexpr std::size_t kLongestPart = 200;
    return short_text(text, kLongestPart);
}

} // namespace

std::string to_text(const InputError& error) {
    std::string place = one_line(error.file);
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
