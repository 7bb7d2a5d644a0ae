#pragma once
// What can be taken hold of on the body's stage, and where it lies.

#include "app/body/body_model.h"
#include "scene/body/body_stage.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

enum class BodyHold {
    place, ///< the thing itself
    tip,   ///< the head of a load's arrow: its size
};

struct BodyGrip {
    BodyPart part;
    BodyHold hold = BodyHold::place;
    std::string name; ///< "dumbbell", "right elbow", "pulley of the cable"
    mechanics::Vec3 at_m = mechanics::Vec3::Zero();
    scene::Point at_px = scene::Point::Zero();
    /// The point of the body that is pulled with it; empty for what does not lie on the body.
    std::optional<mechanics::BodyPoint> point;

    bool is_same(const BodyGrip& other) const { return part == other.part && hold == other.hold; }
};

/// All grips, those that are to be found first where several lie on one another: arrow heads,
/// loads, fixtures, the joints that could be the axis, then the other large joints.
std::vector<BodyGrip> body_grips(const BodyModel& model, const scene::BodyStage& stage);

/// The parts in the order in which the keyboard visits them.
std::vector<BodyPart> parts_of(const std::vector<BodyGrip>& grips);

/// The way of a point of the body through the repetition [m]; empty without a path.
std::vector<mechanics::Vec3> trail_of(const mechanics::Exercise& exercise,
                                      const mechanics::BodyPoint& point);

/// The place on a trail that is nearest to a point of the sheet.
struct OnTrail {
    double progress = 0.0;
    double distance_px = 0.0;
};
OnTrail nearest_on_trail(const std::vector<mechanics::Vec3>& trail_m, const scene::BodyStage& stage,
                         const scene::Point& sheet_px);

} // namespace steelyard::app
