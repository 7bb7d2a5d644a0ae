#pragma once
// The names of A and B over their halves, and what can be done with them.

#include "app/side_by_side/side_by_side_model.h"
#include "app/side_by_side/side_by_side_stage.h"

namespace steelyard::app {

struct PairHeadsOutcome {
    std::optional<Side> choose; ///< another exercise for this side
    bool swap = false;
    bool play = false; ///< start or stop
};

PairHeadsOutcome draw_pair_heads(const Style& style, const PairLayout& place,
                                 const SideBySideModel& model, setup::UnitSystem units,
                                 bool playing);

/// Appends the badges that stand before the names.
void add_head_badges(const PairLayout& place, std::vector<scene::Shape>& shapes);

} // namespace steelyard::app
