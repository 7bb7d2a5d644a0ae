#pragma once
// Words in a row to choose from.

#include "app/look/style.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// One word of a row.
struct RowWord {
    std::string word;
    bool in_force = false;
};

/// Draws words beside each other, broken into lines where they do not fit.
/// @param at        left end of the first baseline; moved on to the last line's
/// @param right_px  where the lines end
/// @return index of the word that was pressed
std::optional<std::size_t> draw_word_row(const Style& style, const char* id,
                                         const std::vector<RowWord>& words, ImVec2& at,
                                         float right_px);

} // namespace steelyard::app
