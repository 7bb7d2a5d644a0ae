#pragma once
// What came in for the place on the sheet in one frame.

#include "app/platform/window.h"
#include "scene/drawing.h"

#include <vector>

namespace steelyard::app {

/// How near the pointer must be to a grip to take it [px]: grips are 28 px wide.
inline constexpr double kGripReach_px = 18.0;

/// The pointer over the stage in one frame.
struct StagePointer {
    scene::Point at_px = scene::Point::Zero();
    bool on_stage = false; ///< over the stage, and not over something that lies on it
    bool pressed = false;  ///< the main button went down in this frame
    bool released = false;
    bool double_clicked = false;
    bool panning = false;                         ///< the middle or right button is down
    scene::Point moved_px = scene::Point::Zero(); ///< since the last frame
    double wheel = 0.0;                           ///< notches, positive = nearer
    bool snap_off = false;                        ///< the key that holds snapping off is down
};

/// What a screen is given in a frame.
struct FrameInput {
    const std::vector<KeyPress>* keys = nullptr; ///< none while a text field has the keyboard
    StagePointer pointer;
    double seconds = 0.0; ///< since the last frame
};

} // namespace steelyard::app
