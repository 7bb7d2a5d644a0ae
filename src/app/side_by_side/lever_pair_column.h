#pragma once
// The column of two levers: effort, arms and advantage in pairs, and what to change about B.

#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/side_by_side/change_dial.h"
#include "app/side_by_side/lever_pair_model.h"

#include <optional>
#include <vector>

namespace steelyard::app {

/// What was asked for in the column.
struct LeverPairColumnWishes {
    std::vector<LeverPairIntent> intents;
    std::optional<mechanics::LeverWay> way; ///< B is to take it
    std::optional<double> dragged;          ///< the selected change is held at this value
    bool to_exercises = false;              ///< two exercises are wanted instead
};

/// @param b  B as it is to be shown: the model's, or on its way there
LeverPairColumnWishes draw_lever_pair_column(const Style& style, const Layout& layout,
                                             const LeverPairModel& model,
                                             const mechanics::LeverResult& b,
                                             setup::UnitSystem units, ChangeDial& dial);

} // namespace steelyard::app
