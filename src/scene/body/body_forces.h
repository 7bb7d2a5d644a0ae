#pragma once
// The forces on a body as they are drawn: which ones, where their arrows begin and end, what they
// are called; and which of them turn a joint.

#include "scene/body/body_stage.h"
#include "scene/marks/force_marks.h"
#include "setup/units/units.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

/// A force as it is seen: a bar held in both hands is one force where the hands lie behind one
/// another.
struct SeenForce {
    mechanics::BodyForce force;
    bool ground = false; ///< from what carries the body, not from what loads it
    Point from = Point::Zero();
    ArrowSpan span; ///< of the arrow on the sheet
    Point to() const { return from + span.along_px; }
};

/// Resistances and ground reactions, those that lie behind one another as one; without spans, which
/// need the scale of the arrows.
std::vector<SeenForce> merged_forces(const mechanics::BodyResult& result, const BodyStage& stage);

/// The same with their arrows, without those that are seen end on or are nothing.
std::vector<SeenForce> seen_forces(const mechanics::BodyResult& result, const BodyStage& stage);

/// True for a resistance that pulls at all.
bool is_pull(const mechanics::BodyForce& force);

/// True when the force loads the hinge: it acts on the far side, or it is a resistance that is
/// carried down to the ground through a leg.
bool loads_hinge(const mechanics::BodyCase& body_case, const mechanics::BodyForce& force,
                 mechanics::Hinge hinge);

/// Index of the force that drives a hinge, whose line and arms are drawn: the resistance that turns
/// it most; for a joint of a leg that the ground carries the push of the ground, since what the
/// body bears reaches this joint through the foot.
std::optional<std::size_t> main_force(const mechanics::BodyCase& body_case,
                                      const mechanics::BodyResult& result, mechanics::Hinge hinge);

} // namespace steelyard::scene
