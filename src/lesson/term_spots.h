#pragma once
// Where a text names terms of the glossary, so that a reader can be taken to them.

#include "lesson/glossary.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::lesson {

/// A stretch of a text that names a term.
struct TermSpot {
    std::size_t begin = 0; ///< bytes of the text
    std::size_t end = 0;
    std::size_t term = 0; ///< index into the terms
};

/// Finds the names of terms in texts: whole words, whatever their capitals, in the plural too. Of a
/// term's other names those are looked for that mean nothing else in running text: of several
/// words, or long ones.
class TermFinder {
public:
    explicit TermFinder(const std::vector<Term>& terms);

    /// Spots from left to right; of names that overlap the longest, of a term the first mention.
    std::vector<TermSpot> spots(std::string_view text) const;

private:
    struct Name {
        std::string low; ///< in small letters
        std::size_t term = 0;
    };
    const Name* longest_at(std::string_view low, std::size_t at, std::size_t& end) const;

    std::vector<Name> names_; ///< longest first
};

} // namespace steelyard::lesson
