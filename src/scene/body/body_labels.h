#pragma once
// What is written on the drawing of a body: torques at the joints, names and sizes of the loads,
// lengths of the moment arms.

#include "scene/body/body_arms.h"
#include "scene/body/body_drawing.h"
#include "scene/body/body_forces.h"

#include <vector>

namespace steelyard::scene {

/// The weight of what lies beyond the chosen axis, as an arrow on the sheet.
struct OwnWeight {
    Point from = Point::Zero();
    Point to = Point::Zero();
    double weight_N = 0.0;
};

/// What there is to be told of a body that is drawn.
struct BodyWords {
    const mechanics::BodyCase& body_case;
    const mechanics::BodyResult& result;
    const BodyStage& stage;
    const BodyDrawing& how;
    std::vector<SeenForce> forces;
    std::vector<BodyArm> arms;
    Role line_role = Role::load; ///< of the line of action and the arms
    std::optional<OwnWeight> own_weight;
    std::optional<PullMark> pull; ///< of a muscle, near by
};

/// Appends the words where they cover nothing that is drawn, with thin leaders where they stand
/// off. Where there is no room the chosen axis, its moment arm and the loads are told by their
/// number alone, and everything else is left out.
/// @param sides  of the words of the drawing before; those of this one then
/// @param board  knows what is drawn, and what else words must keep off
void add_body_words(const BodyWords& words, LabelSides& sides, LabelBoard& board,
                    std::vector<Shape>& shapes);

} // namespace steelyard::scene
