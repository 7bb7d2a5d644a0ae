#pragma once
// How broken lines are broken, for every painter of a drawing: stage, paper and SVG.

#include "scene/drawing.h"

namespace steelyard::scene {

/// Lengths along a line [px]: `on` painted, `off` left out, starting with `on`. Both 0 = unbroken.
struct DashPattern {
    double on_px = 0.0;
    double off_px = 0.0;
};

/// Dashes are 6 px, whatever the width. Dots are as wide as the line: `on` is 0 and the round line
/// ends make the dot; their centres lie 2.25 widths apart.
constexpr DashPattern dash_pattern(const Stroke& stroke) {
    switch (stroke.dash) {
    case Dash::solid:
        return {};
    case Dash::dashed:
        return {6.0, 6.0};
    case Dash::dotted:
        return {0.0, 2.25 * stroke.width_px};
    }
    return {};
}

} // namespace steelyard::scene
