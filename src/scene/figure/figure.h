#pragma once
// The human figure: lofted limbs in clothes, the same construction from every side.

#include "scene/figure/flesh.h"

#include <vector>

namespace steelyard::scene {

/// Appends the figure with what it holds and wears, far parts first, each limb and garment one
/// closed outline; hairlines in the sheet's colour part a limb from what lies behind it. The far
/// side is a shade darker.
void add_figure(const mechanics::BodyCase& body_case, const mechanics::Placement& placement,
                const BodyStage& stage, std::vector<Shape>& shapes);

/// True for the colours of flesh and clothes.
bool is_of_figure(Role role);

/// What a hand does in a case: closed round what it holds, flat on what it leans on.
HandForm hand_form(const mechanics::BodyCase& body_case, mechanics::Segment hand);

} // namespace steelyard::scene
