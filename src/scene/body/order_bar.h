#pragma once
// The order of axis, effort and load along a bone, which is what the class of its lever says: all
// three on one line at their true distances, and the class in words.

#include "mechanics/muscle/muscle_on_body.h"
#include "scene/marks/label_board.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

/// Places along a bone from its joint [m], either way positive, and what their order is called.
struct LeverOrder {
    double effort_m = 0.0;
    double load_m = 0.0;
    mechanics::LeverClass lever_class = mechanics::LeverClass::first;
};

/// "effort in the middle: third class".
std::string words_of(const LeverOrder& order);

/// The order at a hinge by the muscle that pulls most and the load that turns most against it.
/// Across the spine, where muscle and load lie on the two sides of the disc, their distances are
/// the moment arms. Empty where the class is not known.
std::optional<LeverOrder> lever_order(const mechanics::BodyCase& body_case,
                                      const mechanics::BodyResult& result, mechanics::Hinge hinge,
                                      const mechanics::HingeMuscles& muscles);

/// Height that it takes at 100 % of the text's size [px].
inline constexpr double kOrderBar_px = 108.0;

/// Appends it in a room of the sheet.
void add_order_bar(const LeverOrder& order, const Rect& room, double text_scale,
                   std::vector<Shape>& shapes);

} // namespace steelyard::scene
