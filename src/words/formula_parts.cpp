#include "words/formula_parts.h"

#include <cctype>

namespace steelyard::words {
namespace {

bool is_ascii_word(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0;
}

/// Also any part of a letter beyond ASCII, such as τ.
bool is_symbol(char c) {
    return is_ascii_word(c) || static_cast<unsigned char>(c) >= 0x80;
}

/// Whether an index has another letter, or a comma with a letter close behind it.
bool goes_on(std::string_view formula, std::size_t at) {
    const auto is_word = [&](std::size_t place) {
        return place < formula.size() && is_ascii_word(formula[place]);
    };
    return is_word(at + 1) ||
           (at + 2 < formula.size() && formula[at + 1] == ',' && is_word(at + 2));
}

} // namespace

std::vector<FormulaPart> formula_parts(std::string_view formula) {
    std::vector<FormulaPart> parts(1);
    for (std::size_t at = 0; at < formula.size(); ++at) {
        const bool joins = formula[at] == '_' && at > 0 && is_symbol(formula[at - 1]) &&
                           at + 1 < formula.size() && is_ascii_word(formula[at + 1]);
        if (!joins) {
            parts.back().text += formula[at];
            continue;
        }
        parts.push_back({"", true});
        while (goes_on(formula, at))
            parts.back().text += formula[++at];
        parts.push_back({});
    }
    return parts;
}

} // namespace steelyard::words
