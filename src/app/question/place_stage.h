#pragma once
// Answering a place question on the stage: the hand's movement, the keys, and what is drawn of it.

#include "app/frame/frame_input.h"
#include "app/look/style.h"
#include "app/question/question_model.h"
#include "scene/stage_view.h"

namespace steelyard::app {

/// A drag on the stage that is under way.
struct PlaceDrag {
    bool active = false;
    scene::Point pressed_px = scene::Point::Zero();
    problems::Placed began; ///< what the drag moves on from
    bool moves_beginning = false;
};

/// Takes the pointer: drags what is there by its ends, or draws anew.
/// @return true when something was let go: an answer that may be kept
bool drag_place(const StagePointer& pointer, const scene::StageView& view, QuestionModel& model,
                PlaceDrag& drag);

/// Takes a key: arrows move what is placed, with Ctrl its beginning, with Shift five times as far.
/// @return true when the key was meant for it
bool nudge_place(const KeyPress& key, QuestionModel& model);

/// Draws what is placed, and after the answer what should have been, in words too.
void draw_place(const Style& style, const scene::StageView& view, const QuestionModel& model,
                std::vector<scene::Shape>& shapes);

} // namespace steelyard::app
