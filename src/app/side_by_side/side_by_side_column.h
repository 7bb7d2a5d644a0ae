#pragma once
// The column of side by side: how hard each joint is asked in A and in B, and what to change about
// B.

#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/side_by_side/change_dial.h"
#include "app/side_by_side/side_by_side_model.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// The column between frames.
struct PairColumn {
    ChangeDial dial;
    std::string wanted;          ///< as it is typed
    std::string wanted_fault;    ///< what is wrong with it
    bool wants_keyboard = false; ///< the field is to take the keyboard
    bool types = false;          ///< the field has it
    bool shows_refused = false;
    bool scroll_to_selected = false;
};

/// What was asked for in the column.
struct PairColumnWishes {
    std::vector<SideBySideIntent> intents;
    std::optional<double> dragged;     ///< the selected change is held at this value
    std::optional<mechanics::Way> way; ///< B is to take it
    bool to_levers = false;            ///< two levers are wanted instead
    bool reach_aim = false;            ///< B is to reach the aim by the way at hand
};

PairColumnWishes draw_pair_column(const Style& style, const Layout& layout,
                                  const SideBySideModel& model, const ComparedBody& b,
                                  setup::UnitSystem units, PairColumn& column);

/// The changes in the order of the list.
std::vector<mechanics::Change> listed_changes(const SideBySideModel& model,
                                              const PairColumn& column);

/// "Make B equal to A at the hip".
std::string aim_words(const SideBySideModel& model);

} // namespace steelyard::app
