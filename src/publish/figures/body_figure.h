#pragma once
// An exercise of the body as a drawing for paper and files.

#include "mechanics/muscle/muscle.h"
#include "publish/pictures/moving_picture.h"
#include "scene/drawing.h"
#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace steelyard::publish {

struct BodyFigureStyle {
    scene::Point sheet_px{960.0, 640.0}; ///< from about 860 × 540 up; text keeps its size
    std::optional<setup::BodyView> view; ///< empty = the exercise's own
    std::optional<double> progress;      ///< 0 to 1; empty = where the first axis works hardest
    std::optional<std::size_t> close_up; ///< which of its axes is shown near by; empty = all of it
    bool caption = false;                ///< its result in sentences below
    bool plot = false; ///< of an exercise with a path: its torques over the range beside it
};

/// The exercise drawn in one place of its path, as on the stage: figure, forces, arms to every
/// candidate axis, torques and balance strip of the first.
/// @param muscles  all that are known, such as shipped_muscles
/// @return the drawing, or which input cannot be computed with
tl::expected<scene::Drawing, mechanics::MechanicsError>
body_figure(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
            const BodyFigureStyle& style);

/// The exercise through one repetition at rest in each place, in its tempo, else in the usual one,
/// at one scale: what body_figure draws, without a caption. Empty for an exercise that holds still.
/// @param frame_s  between two drawings [s], > 0
std::optional<MovingPicture> repetition_picture(const setup::BodySetup& setup,
                                                const std::vector<mechanics::Muscle>& muscles,
                                                const BodyFigureStyle& style, double frame_s);

} // namespace steelyard::publish
