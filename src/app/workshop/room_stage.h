#pragma once
// The stage of a lesson at a size that can be read from the back row: the same drawings as
// everywhere, enlarged, and without what the room is still to predict.

#include "lesson/lesson_quantity.h"
#include "scene/drawing.h"

#include <vector>

namespace steelyard::app {

/// Smallest type before a room, on a window of 1080 lines [px].
inline constexpr double kSmallestType_px = 43.0;
/// The number that matters, on a window of 1080 lines [px].
inline constexpr double kKeyType_px = 120.0;

/// Enlargement of the sheet's type with which body text reaches the smallest type before a room.
double room_type_scale(double window_height_px);

/// How a stage stands before a room.
struct RoomStage {
    scene::Point size_px{1230.0, 1080.0}; ///< from the window's top left corner
    double top_px = 200.0;                ///< kept free above, for the sentence
    double type_scale = 2.6875;
    setup::UnitSystem units = setup::UnitSystem::si;
    lesson::StageMarks without; ///< marks that are not shown now
    bool strip_later = false;   ///< the balance strip comes at the reveal: its room is kept
    /// Of a body's axes those that the step is about; what else could be an axis would crowd the
    /// stage at this size.
    std::vector<mechanics::Hinge> axes;
};

/// Draws a solved stage.
/// @param muscles  that are known, for a body
scene::Drawing draw_room_stage(const lesson::SolvedStage& solved,
                               const std::vector<mechanics::Muscle>& muscles,
                               const RoomStage& room);

} // namespace steelyard::app
