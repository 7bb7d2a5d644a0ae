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

/// By how much type grows with a large window, such as a projector's, seen from farther off than a
/// desk's: from 1 at 1280 × 720 and below by half as much as the window, in steps of an eighth so
/// that a window being resized does not ask for new fonts at every pixel. Who has chosen large type
/// has it already: the larger the choice, the less is added, and nothing to the largest.
/// @param window_px  at a desktop scale of 1
/// @param text_size  chosen by the person, 0.8 to 2.5
double growth_of(const scene::Point& window_px, double text_size);

/// Readings take 26 % of the width and never less than 300 px at 100 %; on a narrow window they
/// lie below the stage.
Layout lay_out(const scene::Point& window_px, double text_scale);

/// True for a stage too low for its words: they leave only the drawing and its name.
bool is_bare(const Layout& layout, double text_scale);

} // namespace steelyard::app
