#include "problems/marking/typed_choice.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <optional>
#include <set>

namespace steelyard::problems {

namespace {

std::string lower(std::string_view text) {
    std::string result;
    for (const char c : text)
        result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return result;
}

bool is_divider(char c) {
    return c == ' ' || c == ',' || c == ';' || c == '.' || c == '>' || c == '\t' || c == ')' ||
           c == '(';
}

/// "b" or "2" as an index; empty when it is neither.
std::optional<std::size_t> index_of(const std::string& word, std::size_t count) {
    std::size_t index = count;
    if (word.size() == 1 && word[0] >= 'a' && word[0] <= 'z')
        index = static_cast<std::size_t>(word[0] - 'a');
    else if (!word.empty() && word.size() <= 2 &&
             word.find_first_not_of("0123456789") == std::string::npos)
        index = static_cast<std::size_t>(std::stoi(word)) - 1;
    if (index < count)
        return index;
    return std::nullopt;
}

bool is_part_of_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
}

/// Whether a text has a name as whole words; both in small letters.
bool names(std::string_view text, std::string_view name) {
    for (std::size_t at = text.find(name); at != std::string_view::npos;
         at = text.find(name, at + 1)) {
        const std::size_t end = at + name.size();
        if ((at == 0 || !is_part_of_word(text[at - 1])) &&
            (end == text.size() || !is_part_of_word(text[end])))
            return true;
    }
    return false;
}

/// The class of a lever that is all that somebody wrote: "third class", "class 3", "iii".
std::optional<std::size_t> lever_class_in(std::string_view typed) {
    static constexpr std::array<std::array<std::string_view, 4>, 3> kNames{
        {{"first", "1st", "1", "i"}, {"second", "2nd", "2", "ii"}, {"third", "3rd", "3", "iii"}}};
    if (!typed.empty() && typed.front() == '-')
        return std::nullopt; // a number below zero is no class
    std::string words;
    for (const char c : typed)
        words += c == '-' ? ' ' : c;
    for (const std::string_view idle : {"class", "lever", "the ", "a "})
        if (const std::size_t at = words.find(idle); at != std::string::npos)
            words.erase(at, idle.size());
    words.erase(std::remove(words.begin(), words.end(), ' '), words.end());
    for (std::size_t i = 0; i < kNames.size(); ++i)
        if (std::find(kNames[i].begin(), kNames[i].end(), words) != kNames[i].end())
            return i + 1;
    return std::nullopt;
}

/// The choice with a class of lever, where all choices are such.
std::optional<std::size_t> choice_of_class(const std::string& wanted,
                                           const std::vector<std::string>& texts) {
    const auto lever_class = lever_class_in(wanted);
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto here = lever_class_in(lower(texts[i]));
        if (!here)
            return std::nullopt;
        if (here == lever_class)
            found = i;
    }
    return found;
}

/// The only choice that has another name of what was typed.
std::optional<std::size_t> choice_called(const std::string& wanted,
                                         const std::vector<std::string>& texts,
                                         const Synonyms& synonyms) {
    std::set<std::size_t> found;
    for (const std::vector<std::string>& group : synonyms) {
        const bool is_meant = std::any_of(group.begin(), group.end(), [&](const std::string& name) {
            return wanted == name || wanted == "the " + name;
        });
        for (std::size_t i = 0; is_meant && i < texts.size(); ++i)
            if (std::any_of(group.begin(), group.end(),
                            [&](const std::string& name) { return names(lower(texts[i]), name); }))
                found.insert(i);
    }
    return found.size() == 1 ? std::optional(*found.begin()) : std::nullopt;
}

std::string range_of(std::size_t count) {
    return fmt::format("a letter from A to {}",
                       static_cast<char>('A' + static_cast<int>(count) - 1));
}

} // namespace

tl::expected<std::vector<std::size_t>, std::string> read_letters(std::string_view typed,
                                                                 std::size_t count) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : lower(typed) + " ") {
        if (!is_divider(c)) {
            word += c;
        } else if (!word.empty()) {
            if (word != "and")
                words.push_back(word);
            word.clear();
        }
    }
    // "bac" without blanks.
    if (words.size() == 1 && words[0].size() > 1 && words[0].size() <= count &&
        words[0].find_first_of("0123456789") == std::string::npos) {
        const std::string joined = words[0];
        words.clear();
        for (const char c : joined)
            words.emplace_back(1, c);
    }
    std::vector<std::size_t> result;
    for (const std::string& each : words) {
        const std::optional<std::size_t> index = index_of(each, count);
        if (!index)
            return tl::make_unexpected(fmt::format("\"{}\" is not {}.", each, range_of(count)));
        result.push_back(*index);
    }
    if (result.empty())
        return tl::make_unexpected(
            fmt::format("Type {}, or several with blanks between.", range_of(count)));
    return result;
}

tl::expected<std::size_t, std::string> read_choice(std::string_view typed,
                                                   const std::vector<std::string>& texts,
                                                   const Synonyms& synonyms) {
    const std::size_t first = typed.find_first_not_of(" \t");
    if (first == std::string_view::npos)
        return tl::make_unexpected(fmt::format("Type {}.", range_of(texts.size())));
    const std::size_t last = typed.find_last_not_of(" \t.)");
    const std::string wanted =
        last == std::string_view::npos ? "" : lower(typed.substr(first, last - first + 1));
    if (const std::optional<std::size_t> index = index_of(wanted, texts.size()))
        return *index;
    if (const std::optional<std::size_t> of_class = choice_of_class(wanted, texts))
        return *of_class;
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const std::string text = lower(texts[i]);
        if (text == wanted)
            return i;
        if (wanted.size() < 2 || text.find(wanted) == std::string::npos)
            continue;
        if (found)
            return tl::make_unexpected(fmt::format("\"{}\" fits more than one choice. Type {}.",
                                                   std::string(typed), range_of(texts.size())));
        found = i;
    }
    if (!found)
        found = choice_called(wanted, texts, synonyms);
    if (!found)
        return tl::make_unexpected(fmt::format("\"{}\" is none of the choices. Type {}.",
                                               std::string(typed), range_of(texts.size())));
    return *found;
}

} // namespace steelyard::problems
