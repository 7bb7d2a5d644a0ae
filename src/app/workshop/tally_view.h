#pragma once
// The answers to choose from with the hands for each as bars, and the numbers called out as dots
// on a line.

#include "app/look/style.h"
#include "app/workshop/show_model.h"

#include <optional>

namespace steelyard::app {

/// Where the tally stands, and the style of its large numbers.
struct TallyBox {
    float left_px = 0.0F;
    float top_px = 0.0F;
    float width_px = 400.0F;
    const Style& large;
};

/// Draws what a step asks the room for and what the room has said, inside a begun area.
/// @param live  entries go to this very step: the answer that is counted and what is being typed
///              are shown
/// @return the answer that was clicked; of hands the right button takes one back
std::optional<PressAnswer> draw_tally(const Style& style, const TallyBox& box,
                                      const ShowModel& show, const ShownStep& shown,
                                      const StepWords& words, bool live);

} // namespace steelyard::app
