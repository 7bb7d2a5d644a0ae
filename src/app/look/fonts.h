#pragma once
// Inter in the four sizes of the sheet, regular and strong.

#include "scene/drawing.h"

#include <imgui.h>

#include <array>

namespace steelyard::app {

/// Fonts of the sheet; owned by ImGui's atlas.
struct Fonts {
    std::array<ImFont*, 4> regular{}; ///< by scene::TextSize
    std::array<ImFont*, 4> strong{};
    float scale = 1.0F; ///< text size the fonts were made for; 1 = 100 %

    ImFont* get(scene::TextSize size, bool is_strong = false) const {
        return (is_strong ? strong : regular)[static_cast<std::size_t>(size)];
    }
    /// Height that ImGui wants for a text size: ascent plus descent, in whole pixels [px].
    float height(scene::TextSize size) const;
};

/// Fills ImGui's atlas anew. Takes Inter where the system has it, else ImGui's own font, so that
/// the program can be read either way. Digits all get the same width, so that numbers in a column
/// line up and a changing number does not shake.
/// @param scale  text size; 1 = 100 %
/// @param device_pixels  of the window per sheet pixel: letters are made as fine as it shows them
Fonts load_fonts(float scale, float device_pixels = 1.0F);

/// Distance from the top of a line of text to its baseline [px].
float baseline_of(const ImFont& font, float height_px);

} // namespace steelyard::app
