#pragma once
// The drawing of a question on the stage: before the answer only what the question gives away,
// after it the solved lever.

#include "problems/marking/marking.h"
#include "problems/question/question.h"
#include "scene/stage_view.h"

#include <optional>

namespace steelyard::publish {

/// How a question's drawing is wanted.
struct QuestionDrawing {
    scene::Point size_px{640.0, 420.0};
    double text_scale = 1.0;
    double top_px = 24.0;  ///< room kept free at the top once it is answered
    bool answered = false; ///< arms, sizes and the balance strip are shown
    /// The quantity that a wrong answer took, in vermilion, and the one to take, in blue.
    std::optional<problems::DrawnQuantity> wrong;
    std::optional<problems::DrawnQuantity> right;
};

/// Where its lever lies; empty when there is none.
std::optional<scene::StageView> question_view(const problems::Question& question,
                                              const QuestionDrawing& how);

/// The drawing; an empty sheet when the question has none.
scene::Drawing question_drawing(const problems::Question& question, const QuestionDrawing& how);

} // namespace steelyard::publish
