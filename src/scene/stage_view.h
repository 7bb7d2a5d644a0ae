#pragma once
// Where the world lies on the stage, and how long a newton is there.

#include "mechanics/lever/lever_solve.h"
#include "scene/drawing.h"

#include <vector>

namespace steelyard::scene {

/// A rectangle of the sheet and the part of the world that it shows. World y points up, the
/// sheet's down.
struct StageView {
    Point size_px{940.0, 720.0};   ///< the stage, from the sheet's top left corner
    Point origin_px{150.0, 392.0}; ///< where the world's origin lies
    double px_per_m = 700.0;
    double px_per_N = 0.3; ///< the one scale of all arrows

    Point to_sheet(const mechanics::Vec2& world_m) const {
        return {origin_px.x() + px_per_m * world_m.x(), origin_px.y() - px_per_m * world_m.y()};
    }
    mechanics::Vec2 to_world(const Point& sheet_px) const {
        return {(sheet_px.x() - origin_px.x()) / px_per_m,
                (origin_px.y() - sheet_px.y()) / px_per_m};
    }
};

/// Room that is kept around the lever for arrows, labels, title and strip [px].
struct StageMargins {
    double side_px = 120.0;
    double top_px = 150.0;
    double bottom_px = 150.0;
};

/// Shows the whole lever in the middle of the stage, its largest force as an arrow of a good
/// length. Any solved lever can be fitted.
/// @param also_m  further places to be shown: of the limb that it is drawn as
StageView fit_lever(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                    const Point& size_px, const StageMargins& margins,
                    const std::vector<mechanics::Vec2>& also_m = {});

/// The view with the world enlarged about a point of the sheet that stays where it is.
StageView zoomed(const StageView& view, const Point& about_px, double factor);

/// Two stages of one size at the smaller of their scales of lengths and of forces: what is shown
/// side by side can be compared by eye.
void share_scale(StageView& one, StageView& other);

/// A round value (1, 2 or 5 times a power of ten) not above a positive one.
double round_step_below(double value);

} // namespace steelyard::scene
