#pragma once
// What a body holds, carries and wears, drawn as what it is: dumbbells, bars, kettlebells, crates,
// cuffs, the pads of machines and the handles of cables. Sizes are for the drawing only: common
// practice of such equipment, no source.

#include "scene/figure/flesh.h"
#include "scene/figure/paint_order.h"

#include <vector>

namespace steelyard::scene {

/// A part of a thing, to be painted among the limbs by its depth.
struct ThingPart {
    DepthBalls balls;
    std::vector<Shape> shapes;
};

/// The parts of all things on a body in a pose.
std::vector<ThingPart> held_things(const mechanics::BodyCase& body_case,
                                   const mechanics::Placement& placement, const Flesh& flesh,
                                   const BodyStage& stage);

/// A place that a thing reaches, with the radius of what is there [m].
struct ThingReach {
    Vec3 at_m;
    double radius_m;
};

/// How far bars and dumbbells reach beyond the body that holds them.
std::vector<ThingReach> reaches_of_things(const mechanics::BodyCase& body_case,
                                          const mechanics::Placement& placement);

} // namespace steelyard::scene
