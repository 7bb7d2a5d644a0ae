#pragma once
// The drawing of a question: what the learner may see, and nothing that gives the answer away.
// Places are to scale; arrows only show where and which way a force acts, all of one length.

#include "problems/question/question.h"
#include "scene/drawing.h"

namespace steelyard::publish {

/// Whether there is anything to draw.
bool has_figure(const problems::Question& question);

/// Whether it cannot be answered from its words alone: a place is asked for, or a number stands on
/// the drawing only.
bool needs_figure(const problems::Question& question);

/// The figure in a size, from about 320 × 200 px up; an empty sheet when there is nothing to draw.
scene::Drawing question_figure(const problems::Question& question, const scene::Point& size_px);

} // namespace steelyard::publish
