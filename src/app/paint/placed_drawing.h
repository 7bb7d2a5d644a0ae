#pragma once
// A small drawing and where it goes on the sheet, for the shape painter.

#include "scene/drawing.h"

namespace steelyard::app {

struct PlacedDrawing {
    const scene::Drawing* drawing = nullptr; ///< lives until the frame is painted
    scene::Point at_px = scene::Point::Zero();
};

} // namespace steelyard::app
