#pragma once
// What the keys of a keyboard and of a presenter's remote mean while a lesson is shown.

#include "app/platform/window.h"
#include "app/workshop/show_model.h"

#include <optional>
#include <vector>

namespace steelyard::app {

/// What is asked of the window around the lesson.
enum class ShowWish { none, leave, notes_window, notes_below, units };

/// What keys and characters of a frame ask for, in their order.
struct ShowInput {
    std::vector<ShowIntent> intents;
    ShowWish wish = ShowWish::none;
};

/// Nothing that a nervous hand types ends, hides or moves the lesson: after a digit everything
/// typed belongs to the number until Enter or Escape; letters are no commands while a number may be
/// coming; Enter only ends an entry; Escape leaves at its second press.
/// @param keys  that went down, and characters that were typed
ShowInput read_show_keys(const ShowModel& show, const std::vector<KeyPress>& keys);

/// False while a letter that is typed may belong to a number.
bool letters_are_commands(const ShowModel& show);

} // namespace steelyard::app
