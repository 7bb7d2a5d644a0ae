#pragma once
// Where the lever of a question lies on its figure, and how much room its arrows, words and marked
// lengths take.

#include "problems/question/question.h"
#include "scene/stage_view.h"

#include <optional>

namespace steelyard::publish {

/// Distance below the lever of the first length that is marked.
double first_shelf_px(const problems::LeverPicture& picture);

/// Width and height that suit what is drawn: a level lever is drawn on a lower sheet than an
/// upright or bent one.
scene::Point figure_size(const problems::Question& question);

/// Where its lever lies on a figure of this size, as large as fits with room for arrows, words and
/// marked lengths; empty when there is none.
std::optional<scene::StageView> question_figure_view(const problems::Question& question,
                                                     const scene::Point& size_px);

} // namespace steelyard::publish
