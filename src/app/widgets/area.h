#pragma once
// A part of the window that takes the mouse: ImGui windows without any of their decoration.

#include "scene/drawing.h"

#include <imgui.h>

namespace steelyard::app {

/// Begins an area; every begin needs an end_area.
/// @param scrolls  it may hold more than fits
void begin_area(const char* id, const scene::Point& corner_px, const scene::Point& size_px,
                bool scrolls = false);
void end_area();

} // namespace steelyard::app
