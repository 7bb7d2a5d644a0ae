#pragma once
// A number with its name that can be pressed, to type it.

#include "app/look/style.h"

#include <string>

namespace steelyard::app {

/// How wide a chip will be [px].
float chip_width(const Style& style, const std::string& name, const std::string& value);

struct DrawnChip {
    bool pressed = false;
    float width_px = 0.0F;
};

DrawnChip draw_chip(const Style& style, const ImVec2& corner, const std::string& name,
                    const std::string& value);

} // namespace steelyard::app
