#pragma once
// Where the presenter's window opens.

#include <vector>

namespace steelyard::app {

/// A rectangle on the desktop, in screen coordinates: a monitor's room, or a window.
struct ScreenArea {
    int x = 0;
    int y = 0;
    int width = 0;
    int height = 0;
};

/// In the middle of the first monitor that the main window is not on; where there is only one, in
/// its lower right corner, so that the room's picture is not hidden whole. Never larger than the
/// monitor, never beyond its edges.
/// @param monitors  their work areas; empty = nothing is known of them
/// @param wanted    size; its place is where the window goes when nothing is known
ScreenArea presenter_area(const std::vector<ScreenArea>& monitors, const ScreenArea& main,
                          const ScreenArea& wanted);

} // namespace steelyard::app
