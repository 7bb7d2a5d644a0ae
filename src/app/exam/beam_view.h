#pragma once
// The questions of an exam as one graduated beam: a solid notch where there is an answer, a small
// weight below a question to come back to, the pointer over the present one. In the report the same
// beam tells right from wrong by shape.

#include "app/exam/beam_layout.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "learner/exam/exam.h"

#include <optional>
#include <vector>

namespace steelyard::app {

/// What a notch has to say of its question.
enum class NotchSign { open, answered, right, wrong, unanswered };

/// One question.
struct Notch {
    NotchSign sign = NotchSign::open;
    bool come_back = false; ///< a weight hangs below it
};

/// What was done to the beam.
struct BeamWishes {
    std::optional<std::size_t> go_to; ///< a notch that was pressed or the pointer was dragged to
    std::optional<std::size_t> hang;  ///< a weight to be hung below it, or taken off
    std::optional<std::size_t> held;  ///< the notch over which the pointer is being dragged
};

/// The notches of an exam that goes on, and of one that is over.
std::vector<Notch> notches_of(const learner::Exam& exam);
std::vector<Notch> notches_of(const learner::Exam& exam, const learner::ExamReport& report);

/// The beam over the stage, below the row of places.
BeamLayout lay_out_beam(const Style& style, const Layout& layout, std::size_t count);
/// Begins the area that takes the mouse on it; needs an end_area.
/// @param below_px  room below it that belongs to it, too
void begin_beam_area(const Layout& layout, const BeamLayout& beam, float below_px = 0.0F);

/// Draws a beam over a width from a place of the present area on, and takes the mouse there.
/// @param pointer  where the pointer stands; empty = there is none
/// @param hangs    weights can be hung and taken off
BeamWishes draw_beam(const Style& style, const BeamLayout& beam, const std::vector<Notch>& notches,
                     std::optional<double> pointer, bool hangs);

/// What the shapes of a report's beam mean, each with its count, in a line.
/// @param base  left end of the baseline
void draw_beam_legend(const Style& style, ImVec2 base, const std::vector<Notch>& notches);

} // namespace steelyard::app
