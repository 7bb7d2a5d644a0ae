#pragma once
// Where the presenter's window opens.

#include "app/platform/window.h"

#include <vector>

namespace steelyard::app {

/// In the middle of the first monitor that the main window is not on; where there is only one, in
/// its lower right corner, so that the room's picture is not hidden whole. Never larger than the
/// monitor, never beyond its edges.
/// @param monitors  their work areas; empty = nothing is known of them
/// @param wanted    size; its place is where the window goes when nothing is known
ScreenArea presenter_area(const std::vector<ScreenArea>& monitors, const ScreenArea& main,
                          const ScreenArea& wanted);

} // namespace steelyard::app
