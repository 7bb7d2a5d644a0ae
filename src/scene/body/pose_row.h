#pragma once
// The poses of a repetition in a row, small, at one scale, each with its resistance.

#include "mechanics/whatif/exercise.h"
#include "scene/body/body_stage.h"
#include "scene/marks/label_board.h"

#include <vector>

namespace steelyard::scene {

/// One pose of a row.
struct PosePlace {
    double progress = 0.0; ///< on the path, 0 to 1
    double middle_px = 0.0;
};

/// Appends the figures, the floor they stand on, and the forces of the resistances as arrows of one
/// scale.
/// @param room  from which height to which, and how far the floor reaches
/// @param width_px  of one figure's room
void add_pose_row(const mechanics::Exercise& exercise, const Camera& camera,
                  const std::vector<PosePlace>& places, const Rect& room, double width_px,
                  std::vector<Shape>& shapes);

} // namespace steelyard::scene
