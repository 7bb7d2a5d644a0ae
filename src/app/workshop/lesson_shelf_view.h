#pragma once
// The page from which a lesson is chosen.

#include "app/look/style.h"
#include "app/platform/window.h"
#include "app/workshop/lesson_shelf.h"

#include <optional>
#include <vector>

namespace steelyard::app {

struct LessonShelfState {
    std::size_t chosen = 0;
    bool scroll_to_chosen = false;
};

/// What can be asked for here.
enum class LessonWish { none, start, edit, add };

struct LessonShelfFrame {
    LessonWish action = LessonWish::none; ///< about the chosen lesson
    bool notes_window = false;            ///< open the presenter's window
};

/// Draws the lessons below the row of places and reads the keys: arrows choose, Enter
/// starts, E changes a copy or one's own, A makes a new one, N opens the notes window.
LessonShelfFrame draw_lesson_shelf(const Style& style, const scene::Point& window_px,
                                   const std::vector<KeyPress>& keys, const LessonShelf& shelf,
                                   const std::string& message, LessonShelfState& state);

} // namespace steelyard::app
