#include "lesson/term_spots.h"

#include <algorithm>
#include <set>

namespace steelyard::lesson {

namespace {

/// Shorter other names ("pull", "swing", "moment") mean many things in running text.
constexpr std::size_t kTellingLetters = 7;

std::string in_small_letters(std::string_view text) {
    std::string low(text);
    for (char& c : low)
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
    return low;
}

/// Part of a word; so is any byte beyond ASCII.
bool is_of_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
}

bool is_telling(const std::string& name) {
    return name.find_first_of(",(") == std::string::npos &&
           (name.find(' ') != std::string::npos || name.size() >= kTellingLetters);
}

/// End of a name that begins at `at`, with the ending of a plural; nothing where it does not stand
/// there as whole words.
std::size_t end_of(std::string_view low, std::size_t at, const std::string& name) {
    const auto ends = [&](std::size_t end) { return end >= low.size() || !is_of_word(low[end]); };
    if (low.substr(at, name.size()) == name) {
        const std::size_t end = at + name.size();
        for (const std::string_view plural : {"", "s", "es"})
            if (low.substr(end, plural.size()) == plural && ends(end + plural.size()))
                return end + plural.size();
    }
    // "axis" is "axes" in the plural, "emphasis" would be too.
    const std::size_t stem = name.size() - std::min<std::size_t>(name.size(), 2);
    if (name.size() > 3 && name.substr(stem) == "is" &&
        low.substr(at, stem) == name.substr(0, stem) && low.substr(at + stem, 2) == "es" &&
        ends(at + stem + 2))
        return at + stem + 2;
    return at;
}

} // namespace

TermFinder::TermFinder(const std::vector<Term>& terms) {
    for (std::size_t i = 0; i < terms.size(); ++i) {
        names_.push_back({in_small_letters(terms[i].name), i});
        for (const std::string& also : terms[i].also)
            if (is_telling(also))
                names_.push_back({in_small_letters(also), i});
    }
    std::stable_sort(names_.begin(), names_.end(),
                     [](const Name& a, const Name& b) { return a.low.size() > b.low.size(); });
}

const TermFinder::Name* TermFinder::longest_at(std::string_view low, std::size_t at,
                                               std::size_t& end) const {
    for (const Name& name : names_) {
        end = end_of(low, at, name.low);
        if (end > at)
            return &name;
    }
    return nullptr;
}

std::vector<TermSpot> TermFinder::spots(std::string_view text) const {
    const std::string low = in_small_letters(text);
    std::vector<TermSpot> found;
    std::set<std::size_t> met;
    for (std::size_t at = 0; at < low.size();) {
        const bool begins = is_of_word(low[at]) && (at == 0 || !is_of_word(low[at - 1]));
        std::size_t end = at;
        const Name* const name = begins ? longest_at(low, at, end) : nullptr;
        if (name != nullptr && met.insert(name->term).second)
            found.push_back({at, end, name->term});
        at = name != nullptr ? end : at + 1;
    }
    return found;
}

} // namespace steelyard::lesson
