#pragma once
// A drawing's shapes turned into what the shader takes: one fixed-size record a shape.
// No OpenGL here, so that it can be tested without a window.

#include "scene/drawing.h"
#include "scene/palette.h"

#include <array>
#include <vector>

namespace steelyard::app {

/// Which distance function the fragment shader uses; the values are the shader's.
enum class ShapeKind { box_fill = 0, box_outline = 1, triangle = 2, arc = 3, dashes = 4 };

/// One shape as the vertex shader reads it: see shaders/shape.vert.glsl. 19 floats, no padding.
struct ShapeRecord {
    std::array<float, 2> centre{};
    std::array<float, 2> half{};
    std::array<float, 2> turn{1.0F, 0.0F};
    std::array<float, 4> form{};
    std::array<float, 4> form_more{};
    std::array<float, 4> colour{};
    float kind = 0.0F;
};
static_assert(sizeof(ShapeRecord) == 19 * sizeof(float));

/// Appends every shape of a drawing but its labels, moved by an offset on the sheet [px].
/// Appends only: a caller that keeps the vector from frame to frame allocates nothing.
void append_shapes(const scene::Drawing& drawing, const scene::Point& offset_px, scene::Look look,
                   std::vector<ShapeRecord>& records);

} // namespace steelyard::app
