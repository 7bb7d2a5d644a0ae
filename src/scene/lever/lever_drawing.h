#pragma once
// A lever and everything that acts on it, drawn: the same drawing on the stage, on paper and in a
// question.

#include "scene/lever/lever_parts.h"
#include "setup/lever/limb_shape.h"
#include "setup/units/units.h"

#include <string>
#include <vector>

namespace steelyard::scene {

/// What the drawing gives away. A question hides what it asks for.
struct LeverMarks {
    bool heading = true;     ///< name and sentence at the top left
    bool load_sizes = true;  ///< forces and masses of the loads; else their names only
    bool effort_size = true; ///< size of the effort; else its direction only
    bool arms = true;        ///< moment arms with their right angles
    bool lines = true;       ///< lines of action
    bool reaction = true;    ///< force of the axis on the lever
    bool own_weight = true;
    bool turning = true;     ///< senses of the torques about the axis
    bool strip = true;       ///< the balance strip
    bool ruler = true;       ///< distances along the lever
    bool arrow_scale = true; ///< how long a newton is drawn
    bool axis = true;
    bool effort = true;
};

/// A length that the drawing states or that the feedback points out.
struct LengthMark {
    mechanics::Vec2 from_m = mechanics::Vec2::Zero();
    mechanics::Vec2 to_m = mechanics::Vec2::Zero();
    std::string text; ///< "0.30 m"
    Role role = Role::quiet_ink;
};

struct LeverDrawing {
    std::string name;     ///< heading
    std::string sentence; ///< below it
    setup::UnitSystem units = setup::UnitSystem::si;
    double text_scale = 1.0;
    TextSize smallest = TextSize::caption; ///< what is said quietly is set in it
    LeverMarks marks;
    LeverPose pose;
    std::optional<setup::Limb> limb = std::nullopt; ///< drawn instead of a beam
    std::string axis_name;                          ///< empty = as the lever calls it
    std::vector<LengthMark> lengths;
    double heading_top_px = 34.0;  ///< where the heading starts
    double heading_room_px = 44.0; ///< kept free of other labels below that
};

/// Draws a solved lever.
/// @param view  where the lever lies; its size is the drawing's
Drawing draw_lever(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                   const StageView& view, const LeverDrawing& how);

} // namespace steelyard::scene
