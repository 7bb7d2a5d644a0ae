#pragma once
// Where the stage and the column of readings lie in the window.

#include "scene/drawing.h"

namespace steelyard::app {

/// The window divided [px].
struct Layout {
    scene::Point stage_px{940.0, 720.0}; ///< size of the stage, at the top left
    scene::Point column_at_px{940.0, 0.0};
    scene::Point column_px{340.0, 720.0};
    bool narrow = false; ///< the column lies below the stage as a sheet
};

/// Readings take 26 % of the width and never less than 300 px at 100 %; on a narrow window they
/// lie below the stage.
Layout lay_out(const scene::Point& window_px, double text_scale);

} // namespace steelyard::app
