#pragma once
// The strip under a pair: A grows from the left, B from the right, and they meet at the notch when
// they are equal.

#include "scene/drawing.h"
#include "setup/units/units.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// What of A and B the strip compares.
struct PairStrip {
    std::string says; ///< "hardest at the hip": stands behind both letters
    double a = 0.0;   ///< >= 0, in SI
    double b = 0.0;
    setup::Dimension dimension = setup::Dimension::torque;
    bool low = false; ///< there is no room for the verdict; the bars say it
};

/// Height that the strip takes with its words, at 100 % [px].
double pair_strip_height(bool low);

/// Appends the strip at the foot of a stage.
void add_pair_strip(const PairStrip& strip, const scene::Point& stage_px, setup::UnitSystem units,
                    double text_scale, std::vector<scene::Shape>& shapes);

} // namespace steelyard::app
