#include "problems/marking/typed_choice.h"

#include <fmt/core.h>

#include <optional>

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
                                                   const std::vector<std::string>& texts) {
    const std::size_t first = typed.find_first_not_of(" \t");
    if (first == std::string_view::npos)
        return tl::make_unexpected(fmt::format("Type {}.", range_of(texts.size())));
    const std::size_t last = typed.find_last_not_of(" \t.)");
    const std::string wanted =
        last == std::string_view::npos ? "" : lower(typed.substr(first, last - first + 1));
    if (const std::optional<std::size_t> index = index_of(wanted, texts.size()))
        return *index;
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
        return tl::make_unexpected(fmt::format("\"{}\" is none of the choices. Type {}.",
                                               std::string(typed), range_of(texts.size())));
    return *found;
}

} // namespace steelyard::problems
