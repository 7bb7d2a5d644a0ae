#pragma once
// What the room sees: the stage, one sentence, what is to be predicted and what was said, and the
// few words with which the mouse leads the lesson.

#include "app/look/style.h"
#include "app/workshop/show_model.h"

#include <vector>

namespace steelyard::app {

/// What came of a frame before the room.
struct ShowFrame {
    scene::Drawing drawing;          ///< of the stage
    std::vector<ShowIntent> intents; ///< what was clicked
    bool leave = false;
};

/// Draws the step that the room is shown. Its style must be scaled for a room, see
/// room_type_scale.
/// @param note_below  also shows the presenter's note, at the foot
ShowFrame draw_show(const Style& style, const scene::Point& window_px, const ShowModel& show,
                    bool note_below);

/// The axes of a body that a step is about: those that its words name, else the one it looks at.
std::vector<mechanics::Hinge> axes_of(const lesson::LessonStep& step);

/// True for a step that reads a low back, which is never shown without a caution.
bool reads_low_back(const lesson::LessonStep& step);

} // namespace steelyard::app
