#include "setup/toml/spelling.h"

#include <algorithm>

namespace steelyard::setup {
namespace {

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

int slips_allowed(std::size_t length) {
    return length <= 4 ? 1 : length <= 7 ? 2 : 3;
}

/// Longer words are no typing slips of ours, and the table below grows with the product.
constexpr std::size_t kLongestWord = 64;

} // namespace

int spelling_distance(std::string_view one, std::string_view other) {
    const std::size_t rows = one.size() + 1;
    const std::size_t columns = other.size() + 1;
    std::vector<int> distance(rows * columns, 0);
    const auto at = [&](std::size_t row, std::size_t column) -> int& {
        return distance[row * columns + column];
    };
    for (std::size_t row = 0; row < rows; ++row)
        at(row, 0) = static_cast<int>(row);
    for (std::size_t column = 0; column < columns; ++column)
        at(0, column) = static_cast<int>(column);
    for (std::size_t row = 1; row < rows; ++row) {
        for (std::size_t column = 1; column < columns; ++column) {
            const bool same = lower(one[row - 1]) == lower(other[column - 1]);
            at(row, column) = std::min({at(row - 1, column) + 1, at(row, column - 1) + 1,
                                        at(row - 1, column - 1) + (same ? 0 : 1)});
            const bool swapped = row > 1 && column > 1 &&
                                 lower(one[row - 1]) == lower(other[column - 2]) &&
                                 lower(one[row - 2]) == lower(other[column - 1]);
            if (swapped)
                at(row, column) = std::min(at(row, column), at(row - 2, column - 2) + 1);
        }
    }
    return at(rows - 1, columns - 1);
}

std::string nearest_spelling(std::string_view word,
                             const std::vector<std::string_view>& candidates) {
    if (word.empty() || word.size() > kLongestWord)
        return {};
    std::string_view best;
    int best_distance = slips_allowed(word.size()) + 1;
    for (const std::string_view candidate : candidates) {
        if (candidate.size() > kLongestWord)
            continue;
        const int distance = spelling_distance(word, candidate);
        // A word of one letter is within one slip of every other one: that is no hint.
        const bool shares_nothing = distance >= static_cast<int>(word.size()) &&
                                    distance >= static_cast<int>(candidate.size());
        if (distance < best_distance && !shares_nothing) {
            best_distance = distance;
            best = candidate;
        }
    }
    return std::string(best);
}

} // namespace steelyard::setup
