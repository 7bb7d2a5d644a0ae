#include "setup/input_error.h"

namespace steelyard::setup {

std::string to_text(const InputError& error) {
    std::string place = error.file;
    const auto add = [&place](const std::string& part) {
        if (!place.empty())
            place += ", ";
        place += part;
    };
    if (error.line > 0)
        add("line " + std::to_string(error.line));
    if (error.column > 0 && error.key.empty())
        add("column " + std::to_string(error.column));
    if (!error.key.empty())
        add(error.key);

    std::string text = place.empty() ? "" : place + ": ";
    if (!error.found.empty())
        text += "found " + error.found;
    if (!error.expected.empty())
        text += (error.found.empty() ? "expected " : ", expected ") + error.expected;
    if (!text.empty() && text.back() != '.')
        text += '.';
    if (!error.mend.empty())
        text += " " + error.mend;
    return text;
}

} // namespace steelyard::setup
