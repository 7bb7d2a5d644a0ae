#pragma once
// The lever itself, without what acts on it: its beam, and the axis on its stand.

#include "scene/marks/label_board.h"

#include <vector>

namespace steelyard::scene {

/// Sizes of a lever's own parts [px].
struct LeverSizes {
    double beam_px;        ///< outer width
    double beam_inside_px; ///< of the light band in it
    double pin_radius_px;
    double stand_half_px; ///< half the width of the stand's foot
    double stand_px;      ///< its height
};
inline constexpr LeverSizes kStageLever{11.0, 5.5, 6.0, 22.0, 46.0};
inline constexpr LeverSizes kFigureLever{9.0, 5.0, 5.0, 15.0, 30.0}; ///< among lines of text

/// Appends the beam along corners on the sheet; words keep off it.
void add_lever_beam(std::vector<Point> corners_px, const LeverSizes& sizes, LabelBoard& board,
                    std::vector<Shape>& shapes);

/// Appends the axis: a pin, on a stand unless it is seen from above; words keep off them.
void add_lever_axis(const Point& pin_px, bool on_stand, const LeverSizes& sizes, LabelBoard& board,
                    std::vector<Shape>& shapes);

} // namespace steelyard::scene
