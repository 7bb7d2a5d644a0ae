#pragma once
// The palette in ImGui's terms.

#include "scene/palette.h"

#include <imgui.h>

namespace steelyard::app {

/// Colour of lines and fills of a role.
ImU32 colour_u32(scene::Role role, scene::Look look, double opacity = 1.0);
/// Colour of text of that meaning, dark enough to read.
ImU32 text_u32(scene::Role role, scene::Look look);

} // namespace steelyard::app
