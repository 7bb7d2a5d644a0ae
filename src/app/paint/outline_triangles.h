#pragma once
// A form of any outline cut into triangles, for a renderer that knows nothing else.

#include "scene/drawing.h"

#include <array>
#include <vector>

namespace steelyard::app {

/// One of the triangles; side i goes from corner i to the next.
struct OutlineTriangle {
    std::array<scene::Point, 3> corners;
    std::array<bool, 3> on_outline{}; ///< other sides lie within the form
};

/// Cuts a form with its holes by taking off its ears. Every point inside lies in one triangle.
/// Appends only: a caller that keeps the vector allocates little.
void append_triangles(const scene::Outline& outline, std::vector<OutlineTriangle>& triangles);

} // namespace steelyard::app
