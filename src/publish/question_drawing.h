#pragma once
// The drawing of a question: only what the question may give away, until it is answered.

#include "problems/marking.h"
#include "problems/question.h"
#include "scene/drawing.h"
#include "scene/lever_parts.h"

#include <optional>

namespace steelyard::publish {

/// How a question's drawing is wanted.
struct QuestionDrawing {
    scene::Point size_px{640.0, 420.0};
    double text_scale = 1.0;
    double top_px = 24.0;  ///< room kept free at the top
    bool answered = false; ///< arms, sizes and the balance strip are shown
    /// The quantity that a wrong answer took, in vermilion, and the one to take, in blue.
    std::optional<problems::DrawnQuantity> wrong;
    std::optional<problems::DrawnQuantity> right;
};

/// The view in which question_drawing shows the lever: turns a click into a place.
std::optional<scene::StageView> question_view(const problems::Question& question,
                                              const QuestionDrawing& how);

/// The drawing; empty when the question has none.
std::optional<scene::Drawing> question_drawing(const problems::Question& question,
                                               const QuestionDrawing& how);

} // namespace steelyard::publish
