#pragma once
// Letters of UTF-8 text, and what a text from outside may hold of them.
//
// One rule for every short text from outside (names of learners, setups, loads; titles): letters of
// one line, none of them a control or a mark of direction, at most kMostLetters. Who takes one in
// asks fault_of_short_text(); who shows one that was not asked about shows short_text() of it.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// The longest short text [letters].
inline constexpr std::size_t kMostLetters = 80;

/// A letter of a text. Source: UTF-8 as in RFC 3629.
struct Letter {
    std::uint32_t value = 0; ///< its number in Unicode
    std::size_t bytes = 1;   ///< how far to move on
    bool valid = false;      ///< false: a broken sequence, or one that stands for no letter
};

/// The letter that begins at a place within the text.
Letter letter_at(std::string_view text, std::size_t at);

/// Controls C0 and C1, and the ends of lines and paragraphs that Unicode has beside them.
bool is_control(std::uint32_t letter);

/// Marks that turn the direction of the text after them, and those without width that say where a
/// text begins: a name could show another than it is.
/// Source: Unicode Standard Annex 9, section 2; Technical Report 36, section 2.5.
bool is_direction_mark(std::uint32_t letter);

/// What a short text may not be, as a phrase: "more than 80 letters"; empty when it is one.
std::optional<std::string> fault_of_short_text(std::string_view text);

/// The text as one that can be shown in a line: controls become spaces, marks of direction vanish,
/// what is no letter becomes U+FFFD, and one of more than `most` letters ends in an ellipsis.
std::string short_text(std::string_view text, std::size_t most = kMostLetters);

/// The same without an end.
std::string one_line(std::string_view text);

/// The first letters of a text that somebody types, as a short text.
std::string typed_name(std::string_view text);

/// Whether a text of many lines may hold a letter: line breaks and tabs it may.
bool is_of_text(std::uint32_t letter);

} // namespace steelyard::setup
