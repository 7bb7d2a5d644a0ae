#pragma once
// The names of A and B over their halves, and what can be done with them.

#include "app/side_by_side/side_by_side_model.h"
#include "app/side_by_side/side_by_side_stage.h"

#include <string>

namespace steelyard::app {

struct PairHeadsWishes {
    std::optional<Side> choose; ///< another exercise for this side
    bool swap = false;
    bool play = false; ///< start or stop
};

/// The head of one side.
struct SideHead {
    Side side = Side::a;
    std::string name;
    std::string told; ///< a line below the name
    scene::Point corner_px = scene::Point::Zero();
    double width_px = 0.0;
    bool low = false; ///< little height: the name only
};

/// Draws the name and words of one side, in an area that holds them; the badge is the stage's.
void draw_side_head(const Style& style, const SideHead& head, PairHeadsWishes& wishes);

PairHeadsWishes draw_pair_heads(const Style& style, const PairLayout& place,
                                const SideBySideModel& model, setup::UnitSystem units,
                                bool playing);

/// Appends the badges that stand before the names.
void add_head_badges(const PairLayout& place, std::vector<scene::Shape>& shapes);

} // namespace steelyard::app
