#include "setup/toml/letters.h"

#include <fmt/format.h>

#include <limits>

namespace steelyard::setup {

namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD"; // U+FFFD

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

} // namespace

Letter letter_at(std::string_view text, std::size_t at) {
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

bool is_control(std::uint32_t letter) {
    const bool c0_or_c1 = letter < 0x20 || (letter >= 0x7F && letter <= 0x9F);
    return c0_or_c1 || letter == 0x2028 || letter == 0x2029;
}

bool is_direction_mark(std::uint32_t letter) {
    return letter == 0x061C || letter == 0x200E || letter == 0x200F ||
           (letter >= 0x202A && letter <= 0x202E) || (letter >= 0x2066 && letter <= 0x2069) ||
           letter == 0xFEFF;
}

std::optional<std::string> fault_of_short_text(std::string_view text) {
    std::size_t letters = 0;
    for (std::size_t at = 0; at < text.size(); ++letters) {
        const Letter letter = letter_at(text, at);
        if (!letter.valid)
            return "bytes that are no letters in UTF-8";
        if (is_control(letter.value))
            return "a line break or another control character";
        if (is_direction_mark(letter.value))
            return fmt::format("a mark that turns the direction of a text (U+{:04X})",
                               letter.value);
        at += letter.bytes;
    }
    if (letters > kMostLetters)
        return fmt::format("more than {} letters", kMostLetters);
    return std::nullopt;
}

std::string short_text(std::string_view text, std::size_t most) {
    std::string line;
    std::size_t letters = 0;
    std::size_t room = 0; // where an ellipsis would stand
    for (std::size_t at = 0; at < text.size();) {
        const Letter letter = letter_at(text, at);
        const std::string_view bytes = text.substr(at, letter.bytes);
        at += letter.bytes;
        if (letter.valid && is_direction_mark(letter.value))
            continue;
        if (letters == most)
            return line.substr(0, room) + "…";
        if (++letters == most)
            room = line.size();
        line += !letter.valid              ? kReplacement
                : is_control(letter.value) ? std::string_view(" ")
                                           : bytes;
    }
    return line;
}

std::string typed_name(std::string_view text) {
    const std::string line = one_line(text);
    std::size_t end = 0;
    for (std::size_t i = 0; i < kMostLetters && end < line.size(); ++i)
        end += letter_at(line, end).bytes;
    return line.substr(0, end);
}

bool is_of_text(std::uint32_t letter) {
    const bool breaks = letter == '\n' || letter == '\t' || letter == '\r';
    return breaks || (!is_control(letter) && !is_direction_mark(letter));
}

std::string one_line(std::string_view text) {
    return short_text(text, std::numeric_limits<std::size_t>::max());
}

} // namespace steelyard::setup
