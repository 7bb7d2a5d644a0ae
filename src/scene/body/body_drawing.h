#pragma once
// A body in one place of an exercise, drawn with the forces on it and the arms to every joint that
// could be the axis.

#include "mechanics/muscle/muscle_on_body.h"
#include "scene/body/close_up.h"
#include "scene/marks/label_board.h"
#include "words/body/body_words.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

/// What the drawing gives away beyond the body. A lesson hides what it asks for.
struct BodyMarks {
    bool axes = true;       ///< the joints that could be the axis
    bool arms = true;       ///< moment arms
    bool lines = true;      ///< lines of action
    bool load_sizes = true; ///< sizes of the resistances; else their arrows are all of one length
    bool reaction = true;   ///< force of the ground
};

/// On which side of its place a word stands, by what it is of: -1 left, 1 right, 0 above or below.
/// Words that are drawn again with the sides of the drawing before stay there while they find room.
using LabelSides = std::map<std::string, int>;

struct BodyDrawing {
    std::string name;     ///< heading; empty = none
    std::string sentence; ///< below it; empty = none
    setup::UnitSystem units = setup::UnitSystem::si;
    double text_scale = 1.0;
    double heading_top_px = 34.0;
    double heading_room_px = 50.0; ///< below it, at 100 %: where nothing else is drawn
    /// Hinges that could be called the axis, and which of them is looked at.
    std::vector<mechanics::Hinge> axes;
    std::size_t chosen = 0;
    /// Muscles of the chosen hinge; empty = none are drawn.
    std::optional<mechanics::HingeMuscles> muscles;
    bool resting_muscles = false; ///< those that do not pull, the antagonists too, faintly
    bool torques = true; ///< sizes of torques and muscle forces; false while they are predicted
    bool strip = true;
    BodyMarks marks;
    /// The way of the load through the repetition [m]; empty = none is drawn.
    std::vector<Vec3> trail_m;
    /// One joint near by: the figure is cut to the stage, the muscle that pulls most is drawn with
    /// its moment arm, and what stands on the sheet besides; empty = all of the body.
    std::optional<CloseUp> close_up;
    std::vector<Rect> kept_clear; ///< where no label may stand: plots, chips
};

using words::axis_word;
using words::joint_word;

Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how);

/// The same, one of a row of drawings of a repetition.
/// @param sides  of the words of the drawing before, empty for the first; those of this one then
Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how, LabelSides& sides);

} // namespace steelyard::scene
