#pragma once
// What a held body lies or sits on: a bench, a seat, a mat. Drawn only; the force that it carries
// is not computed from it.

#include "mechanics/body/solve_body.h"
#include "scene/body/body_stage.h"
#include "scene/marks/label_board.h"

#include <optional>
#include <vector>

namespace steelyard::scene {

/// The top of a pad under a body of which the pelvis, the trunk or a thigh is held.
/// @param lowest_px  where it ends when the floor lies below that
/// @return the room from its top down to the floor; empty for a body that stands or hangs, that is
///         seen from above or aslant, or that touches the floor itself
std::optional<Rect> support_pad(const mechanics::BodyCase& body_case,
                                const mechanics::Placement& placement, const BodyStage& stage,
                                double lowest_px);

/// Boxes under feet and knees that press on something above the floor, from their tops down.
/// @param lowest_px  as above
std::vector<Rect> raised_steps(const mechanics::BodyCase& body_case,
                               const mechanics::Placement& placement, const BodyStage& stage,
                               double lowest_px);

/// Appends a pad with what carries it: what is low lies on the floor, what is higher stands on
/// legs.
void add_support_pad(const Rect& room, std::vector<Shape>& shapes);

/// Appends a box that somebody stands on.
void add_step(const Rect& room, std::vector<Shape>& shapes);

} // namespace steelyard::scene
